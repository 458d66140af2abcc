import { readFileSync, readdirSync } from 'node:fs';
import { relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { sentencesIn } from './sentences.ts';

const SRC = fileURLToPath(new URL('../../src/', import.meta.url));

const files = ['ui', 'map', 'offline', 'workers']
  .flatMap((folder) => readdirSync(`${SRC}${folder}`, { recursive: true, withFileTypes: true }))
  .filter(({ name }) => /\.(ts|svelte)$/.test(name))
  .map((entry) => `${entry.parentPath}/${entry.name}`);

test('no script of the screens has a sentence of its own: notices, labels and steps come from src/words', () => {
  expect(files.length).toBeGreaterThan(150);
  const faults = files.flatMap((file) =>
    sentencesIn(file, readFileSync(file, 'utf8')).map(
      (text) => `${relative(SRC, file)} says “${text}” itself; it belongs into src/words.`,
    ),
  );
  expect(faults).toEqual([]);
});

test.each([
  ["notices.say('Removed a photo.');", 1],
  ['notices.say(`Drew ${name}.`);', 0],
  ['notices.say(`Took the path of ${name}.`);', 1],
  ["throw new Error('The order was not waited for.');", 0],
  ["const how = 'as recorded';", 0],
])('%s', (source, count) => {
  expect(sentencesIn('a.ts', source)).toHaveLength(count);
});

test('and in the script of a Svelte file', () => {
  const source = '<script lang="ts">const words = \'Nothing here yet\';</script><p>{words}</p>';
  expect(sentencesIn('a.svelte', source)).toEqual(['Nothing here yet']);
});
