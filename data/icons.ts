import { readFileSync } from 'node:fs';
import { chromium } from 'playwright-core';
import { browserPath } from '../src/cli/browser.ts';

/** Paints `public/icon.svg` as the PNG files that devices ask for: `npx tsx data/icons.ts`. */
const SVG = readFileSync('public/icon.svg', 'utf8');

/** Shows what the drawing has beyond its edges: of a maskable icon only the inner 80 % is safe (W3C, Web Application Manifest). */
const MASKABLE = SVG.replace('viewBox="0 0 64 64"', 'viewBox="-9 -9 82 82"');

const browser = await chromium.launch({ executablePath: browserPath()!, args: ['--no-sandbox'] });
const page = await browser.newPage();
for (const [name, svg, px] of [
  ['icon-180', SVG, 180],
  ['icon-192', SVG, 192],
  ['icon-512', SVG, 512],
  ['icon-maskable-512', MASKABLE, 512],
] as const) {
  await page.setViewportSize({ width: px, height: px });
  await page.setContent(`<style>body { margin: 0 } svg { display: block }</style>${svg}`);
  await page.screenshot({ path: `public/${name}.png` });
}
await browser.close();
