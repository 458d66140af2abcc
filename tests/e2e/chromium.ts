import { execFileSync } from 'node:child_process';
import { accessSync, constants, readFileSync } from 'node:fs';
import { delimiter, join } from 'node:path';

const NAMES = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable', 'chrome'];

const PLACES = [
  '/usr/bin',
  '/usr/local/bin',
  '/opt/google/chrome',
  '/snap/bin',
  '/Applications/Google Chrome.app/Contents/MacOS',
  '/Applications/Chromium.app/Contents/MacOS',
  'C:\\Program Files\\Google\\Chrome\\Application',
];

const FILES = [...NAMES, 'Google Chrome', 'Chromium', 'chrome.exe'];

/** WebGL 2 in software, and no talk with the network. */
export const CHROMIUM_ARGS = [
  '--no-sandbox',
  '--use-gl=angle',
  '--use-angle=swiftshader',
  '--enable-unsafe-swiftshader',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--no-first-run',
];

/** Path of a Chrome or Chromium: CHROME_BIN, PATH, the usual places; on Debian as root it is installed. */
export function chromiumPath(): string {
  const found = fromEnvironment() ?? look();
  if (found !== null) return found;
  if (isDebian() && process.getuid?.() === 0) {
    execFileSync('apt-get', ['update'], { stdio: 'inherit' });
    execFileSync('apt-get', ['install', '-y', 'chromium'], { stdio: 'inherit' });
    const installed = look();
    if (installed !== null) return installed;
  }
  throw new Error(
    'The browser tests need Chrome or Chromium. Install one, or set CHROME_BIN to the path of its program.',
  );
}

function fromEnvironment(): string | null {
  const named = process.env.CHROME_BIN;
  if (named === undefined || named === '') return null;
  if (!isProgram(named)) throw new Error(`CHROME_BIN is ${named}, and there is no program there.`);
  return named;
}

function look(): string | null {
  const folders = [...(process.env.PATH ?? '').split(delimiter), ...PLACES];
  for (const folder of folders)
    for (const name of FILES) if (isProgram(join(folder, name))) return join(folder, name);
  return null;
}

function isProgram(path: string): boolean {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

function isDebian(): boolean {
  try {
    return /^ID(_LIKE)?=.*debian/m.test(readFileSync('/etc/os-release', 'utf8'));
  } catch {
    return false;
  }
}
