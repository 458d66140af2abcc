import { accessSync, constants } from 'node:fs';
import { delimiter, join } from 'node:path';

const NAMES = [
  'chromium',
  'chromium-browser',
  'google-chrome',
  'google-chrome-stable',
  'chrome',
  'Google Chrome',
  'Chromium',
  'chrome.exe',
];

const PLACES = [
  '/usr/bin',
  '/usr/local/bin',
  '/opt/google/chrome',
  '/snap/bin',
  '/Applications/Google Chrome.app/Contents/MacOS',
  '/Applications/Chromium.app/Contents/MacOS',
  'C:\\Program Files\\Google\\Chrome\\Application',
];

/** Path of a Chrome or Chromium: CHROME_BIN, PATH, the usual places; null where there is none. */
export function browserPath(): string | null {
  const named = process.env.CHROME_BIN;
  if (named) return isProgram(named) ? named : null;
  const folders = [...(process.env.PATH ?? '').split(delimiter), ...PLACES];
  return folders.flatMap((folder) => NAMES.map((name) => join(folder, name))).find(isProgram) ?? null;
}

function isProgram(path: string): boolean {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}
