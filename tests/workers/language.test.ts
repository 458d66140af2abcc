import { readFileSync, readdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';

const FOLDER = fileURLToPath(new URL('../../src/workers/', import.meta.url));

const files = readdirSync(FOLDER).map((name) => ({ name, text: readFileSync(`${FOLDER}${name}`, 'utf8') }));

/** Workers that answer with numbers and pictures, and say nothing. */
const SILENT = ['photo', 'needed'];

test('every worker that says something is told by its name which language is spoken', () => {
  const made = files.flatMap(({ text }) =>
    [
      ...text.matchAll(/new Worker\(new URL\('\.\/(\w+)\.worker\.ts', import\.meta\.url\), \{([^}]*)\}\)/g),
    ].map(([, worker, options]) => ({ worker, told: /\bname: spoken\b/.test(options) })),
  );
  const all = files.flatMap(({ name }) => /^(\w+)\.worker\.ts$/.exec(name)?.[1] ?? []);
  expect(made.map(({ worker }) => worker).sort()).toEqual(all.sort());
  expect(made.filter(({ worker, told }) => !told && !SILENT.includes(worker))).toEqual([]);
});

test('and speaks it before it loads anything else', () => {
  const workers = files.filter(({ name }) => name.endsWith('.worker.ts'));
  const late = workers.filter(({ text }) => !text.startsWith("import './language.ts';"));
  expect(
    late.map(({ name }) => name.replace('.worker.ts', '')).filter((name) => !SILENT.includes(name)),
  ).toEqual([]);
});
