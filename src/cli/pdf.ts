import type { Problem, Reading } from '../problem.ts';
import { browserPath } from './browser.ts';

export type Paper = 'A4' | 'Letter';

/** Nothing of the page may reach for the network, and root needs no sandbox to print its own text. */
const ARGS = [
  '--no-sandbox',
  '--disable-background-networking',
  '--disable-component-update',
  '--no-first-run',
];

/** A page of HTML as a browser prints it. The browser and what drives it are looked for only now. */
export async function pdfOf(markup: string, paper: Paper): Promise<Reading<Uint8Array>> {
  const executablePath = browserPath();
  if (executablePath === null)
    return cannot(
      'There is no Chrome or Chromium to print with.',
      'Install one, set CHROME_BIN to the path of its program, or leave --pdf out and print the page from any browser.',
    );
  const driver = await import('playwright-core').catch(() => null);
  if (driver === null)
    return cannot('playwright-core, which drives the browser, is not installed.', 'Run npm ci first.');
  try {
    const browser = await driver.chromium.launch({ executablePath, args: ARGS });
    try {
      const page = await browser.newPage({ offline: true, javaScriptEnabled: false });
      await page.setContent(markup);
      return { value: await page.pdf({ format: paper, preferCSSPageSize: true }), problems: [] };
    } finally {
      await browser.close();
    }
  } catch (error) {
    const [what] = String(error).split('\n');
    return cannot(
      `The browser did not print (${what}).`,
      'Leave --pdf out and print the page from any browser.',
    );
  }
}

function cannot(what: string, done: string): Reading<Uint8Array> {
  const problem: Problem = { severity: 'error', where: '--pdf', what, done, times: 1 };
  return { value: null, problems: [problem] };
}
