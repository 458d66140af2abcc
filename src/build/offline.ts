import { createHash } from 'node:crypto';
import { readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { gunzipSync } from 'node:zlib';
import type { Plugin } from 'vite';
import type { KeptFile } from '../offline/kept.ts';

const WORKER = 'service-worker.js';

/** What is delivered for others, and the second form of fonts that every browser with service workers has in the first. */
const NOT_NEEDED = /^(rutline\.png|trip\.schema\.json|demo\/hobnail-spur\.gpx|.*\.woff)$/;

/** Builds the service worker from its source, and tells it by content which files the program is made of. */
export function offline(source: string): Plugin {
  return {
    name: 'rutline-offline',
    apply: 'build',
    buildStart() {
      this.emitFile({ type: 'chunk', id: source, fileName: WORKER });
    },
    generateBundle(_, bundle) {
      const worker = bundle[WORKER];
      if (worker.type !== 'chunk' || worker.imports.length > 0)
        this.error(`${WORKER} must stand alone: some browsers load no module as a service worker.`);
    },
    writeBundle: { order: 'post', handler: ({ dir }) => seal(dir!) },
  };
}

/** Writes into the service worker of a build what the build holds, in place of what it said before. */
export function seal(dir: string): void {
  const file = join(dir, WORKER);
  const code = readFileSync(file, 'utf8').replace(/^const KEPT=.*\n/, '');
  const files = filesOf(dir);
  const version = hash(code + JSON.stringify(files)).slice(0, 12);
  writeFileSync(file, `const KEPT=${JSON.stringify({ version, files })};\n${code}`);
}

/** The page itself goes by the name of its folder: a server may send `index.html` elsewhere. */
function filesOf(dir: string): KeptFile[] {
  return readdirSync(dir, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => relative(dir, join(entry.parentPath, entry.name)).replaceAll('\\', '/'))
    .filter((path) => path !== WORKER && !NOT_NEEDED.test(path))
    .sort()
    .map((path) => ({
      path: path === 'index.html' ? './' : path,
      integrity: contents(join(dir, path))
        .map((content) => `sha256-${hash(content)}`)
        .join(' '),
    }));
}

/** As a page may receive the file: some servers have browsers unpack what ends in `.gz`, others do not. */
function contents(file: string): Buffer[] {
  const content = readFileSync(file);
  return file.endsWith('.gz') ? [content, gunzipSync(content)] : [content];
}

function hash(content: string | Buffer): string {
  return createHash('sha256').update(content).digest('base64');
}
