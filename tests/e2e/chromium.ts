import { browserPath } from '../../src/cli/browser.ts';
import { isThere } from '../debian.ts';

/**
 * What Chromium leaves away. Each new window would load the two pages that drop down from the bar of addresses, which is a
 * third of the work of opening the program in it, and hold a process ready for a next page. Only the last list of a command
 * line counts, so that what Playwright 1.65 turns off stands here again.
 */
const WITHOUT = [
  'WebUIOmniboxPopup',
  'WebUIOmniboxAimPopup',
  'SpareRendererForSitePerProcess',
  'AvoidUnnecessaryBeforeUnloadCheckSync',
  'DestroyProfileOnBrowserClose',
  'HttpsUpgrades',
  'HttpsFirstBalancedModeAutoEnable',
  'LensOverlay',
  'MediaRouter',
  'PaintHolding',
  'ThirdPartyStoragePartitioning',
  'AvoidCorsURLLoaderRestartOnRedirect',
  'TcpPortRandomizationWin',
  'OptimizationHints',
  'NetworkTimeServiceQuerying',
  'AimEnabled',
  'PreconnectToSearch',
];

/**
 * The page is composed without a graphics card, and only the map's WebGL 2 is drawn by an emulated one, which would take a
 * third of a second for each picture of a page. No talk with the network.
 */
export const CHROMIUM_ARGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--enable-unsafe-swiftshader',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--no-first-run',
  `--disable-features=${WITHOUT.join()}`,
];

/**
 * The same for pages of a test, which live for seconds: their code is not compiled to the last, and what compiling takes of
 * memory is kept, as giving it back stops all cores of a virtual machine for a moment. A third of the processor time.
 */
export const TESTED_ARGS = [...CHROMIUM_ARGS, '--js-flags=--no-turbofan --managed-zone-memory'];

/** Path of a Chrome or Chromium: CHROME_BIN, PATH, the usual places; on Debian as root it is installed. */
export function chromiumPath(): string {
  const found = browserPath();
  if (found !== null) return found;
  const named = process.env.CHROME_BIN;
  if (named) throw new Error(`CHROME_BIN is ${named}, and there is no program there.`);
  const installed = isThere('chromium', 'chromium', 'chromium-sandbox', 'fonts-liberation')
    ? browserPath()
    : null;
  if (installed !== null) return installed;
  throw new Error(
    'The browser tests need Chrome or Chromium. Install one, or set CHROME_BIN to the path of its program.',
  );
}
