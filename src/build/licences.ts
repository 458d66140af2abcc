import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Plugin } from 'vite';

/** One package of other people's that is delivered with the program. */
export interface Delivered {
  readonly name: string;
  readonly version: string;
  /** An SPDX expression, as the package states it. */
  readonly licence: string;
  /** Where it lies. */
  readonly folder: string;
}

/** Licences that ask no more than to be told, as SPDX names them; a package may be delivered under these and no other. */
export const ALLOWED = [
  '0BSD',
  'Apache-2.0',
  'BSD-2-Clause',
  'BSD-3-Clause',
  'CC0-1.0',
  // The Eclipse Distribution License is BSD-3-Clause by another name.
  'EDL-1.0',
  'ISC',
  'MIT',
  'OFL-1.1',
  'Unlicense',
  'Zlib',
];

/** What a package says in no name of SPDX; each was read in its own LICENSE file. */
const READ: Readonly<Record<string, string>> = { arc: 'BSD-2-Clause', 'splaytree-ts': 'BSD-3-Clause' };

/** Compiled into the program, though it is only needed to build it. */
const BUILT_IN = ['svelte'];

interface Locked {
  readonly version: string;
  readonly license?: string;
  readonly dependencies?: Readonly<Record<string, string>>;
}

/** Everything that is delivered, dependencies of dependencies included, by name. */
export function delivered(root: string): Delivered[] {
  const lock = JSON.parse(readFileSync(join(root, 'package-lock.json'), 'utf8')) as {
    readonly packages: Readonly<Record<string, Locked>>;
  };
  const found = new Map<string, Locked>();
  const wanted = [...Object.keys(lock.packages[''].dependencies ?? {}), ...BUILT_IN].map((name) => ({ name, from: '' })); // prettier-ignore
  for (let next = wanted.pop(); next !== undefined; next = wanted.pop()) {
    const place = placeOf(next.name, next.from, lock.packages);
    if (place === null || found.has(place)) continue;
    found.set(place, lock.packages[place]);
    for (const name of Object.keys(lock.packages[place].dependencies ?? {}))
      wanted.push({ name, from: place });
  }
  return [...found]
    .map(([place, { version, license }]) => {
      const name = place.slice(place.lastIndexOf('node_modules/') + 'node_modules/'.length);
      return { name, version, licence: READ[name] ?? license ?? '', folder: join(root, place) };
    })
    .sort((a, b) => (a.name < b.name ? -1 : 1));
}

/** Where Node finds a package from another one: beside it, or in a folder above. */
function placeOf(name: string, from: string, packages: Readonly<Record<string, unknown>>): string | null {
  for (let at = from; ; at = at.slice(0, Math.max(0, at.lastIndexOf('/node_modules/')))) {
    const place = `${at === '' ? '' : `${at}/`}node_modules/${name}`;
    if (Object.hasOwn(packages, place)) return place;
    if (at === '') return null;
  }
}

/** Whether one may choose an allowed licence, or where several hold at once, all of them are. */
export function isAllowed(expression: string): boolean {
  const bare = expression.replace(/[()]/g, '');
  return bare
    .split(' OR ')
    .some((choice) => choice.split(' AND ').every((licence) => ALLOWED.includes(licence)));
}

/** All licences as one text: packages under the same words are named together above them. */
export function licencesText(packages: readonly Delivered[]): string {
  const byText = new Map<string, Delivered[]>();
  for (const one of packages) {
    const text = licenceOf(one);
    byText.set(text, [...(byText.get(text) ?? []), one]);
  }
  const parts = [...byText].map(([text, those]) =>
    [...those.map(({ name, version, licence }) => `${name} ${version} (${licence})`), '', text].join('\n'),
  );
  return `Rutline is delivered with the work of others, under these licences.\n\n${parts.join(`\n\n${'-'.repeat(72)}\n\n`)}\n`;
}

/** The text that a package brings along; the name of its licence where it brings none. */
function licenceOf({ folder, licence }: Delivered): string {
  const files = existsSync(folder)
    ? readdirSync(folder)
        .filter((name) => /licen[cs]e|copying/i.test(name))
        .sort()
    : [];
  const texts = files.map((file) => readFileSync(join(folder, file), 'utf8').replaceAll('\r\n', '\n').trim());
  return texts.join('\n\n') || `Under ${licence}; the package brings no text of it.`;
}

/** Puts the licences of what is delivered into the build, as a page of text. */
export function licences(): Plugin {
  return {
    name: 'rutline-licences',
    apply: 'build',
    generateBundle() {
      const source = licencesText(delivered(process.cwd()));
      this.emitFile({ type: 'asset', fileName: 'licences.txt', source });
    },
  };
}
