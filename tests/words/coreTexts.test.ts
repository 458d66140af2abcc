import { readFileSync, readdirSync } from 'node:fs';
import { relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { en } from '../../src/words/en/en.ts';
import { coreTexts, identifiersIn } from './coreTexts.ts';

const SRC = fileURLToPath(new URL('../../src/', import.meta.url));
const FOLDERS = 'route terrain vehicle traverse grade convoy draw brief archive workers'.split(' ');
const TOP = ['units.ts', 'field.ts', 'problem.ts'];

const files = FOLDERS.flatMap((folder) =>
  readdirSync(SRC + folder, { recursive: true, withFileTypes: true })
    .filter(({ name }) => name.endsWith('.ts'))
    .map((entry) => relative(SRC, `${entry.parentPath}/${entry.name}`)),
)
  .concat(TOP)
  .map((file) => ({ file, code: readFileSync(SRC + file, 'utf8') }));

/** What things are called by in code and files: keys of the catalogue, of records, and words of types. */
const IDENTIFIERS = new Set([...keysOf(en), ...files.flatMap(({ file, code }) => identifiersIn(file, code))]);

function keysOf(words: object): string[] {
  return Object.entries(words).flatMap(([key, value]: [string, unknown]) =>
    typeof value === 'object' && value !== null ? [key, ...keysOf(value)] : [key],
  );
}

/** What looks like a text and is read by no person, with the reason. */
const NO_TEXTS: readonly { readonly in: string; readonly is: RegExp; readonly why: string }[] = [
  {
    in: 'route/xml.ts',
    is: /^unmatched closing tag/,
    why: 'words of the XML parser, to tell its errors apart',
  },
  { in: 'grade/classifications/', is: /Council|provider$/, why: 'who publishes it, by its own name' },
  {
    in: 'draw/',
    is: /^(vehicle|housing|tyre|bound|way|bar|least|cause|margin|rung|tone|dot) (\w+|\w+-…)$/,
    why: 'classes of what is drawn',
  },
  { in: 'brief/pageStyle.ts', is: /^@page/, why: 'a style sheet' },
  { in: 'archive/schema.ts', is: /./, why: 'the published schema, for programmers, is English' },
  { in: 'archive/obstacleRecord.ts', is: /^main, offset, bypass$/, why: 'kinds as they stand in a file' },
  { in: 'archive/geopackage/', is: /^(SELECT|INSERT|DELETE|CREATE|PRAGMA|SQLite) /, why: 'SQL' },
  {
    in: 'archive/geopackage/layers.ts',
    is: /\.$/,
    why: 'what its tables say of themselves, as names of columns English in every language',
  },
  { in: 'archive/out/gpx.ts', is: /^lat="…" lon="…"$/, why: 'attributes of GPX' },
];

test('nothing that a person reads is written in the core beside src/words', () => {
  expect(files.length).toBeGreaterThan(100);
  const faults = files.flatMap(({ file, code }) =>
    coreTexts(file, code)
      .filter((text) => !IDENTIFIERS.has(text))
      .filter((text) => !NO_TEXTS.some((none) => file.startsWith(none.in) && none.is.test(text)))
      .map((text) => `${file} says “${text}” itself; it belongs into src/words.`),
  );
  expect(faults).toEqual([]);
});

describe('a text is found', () => {
  test.each([
    "const cause = 'front corner touches';",
    'const what = `The file is larger than ${most} MB.`;',
    "reader.error(where, 'Nothing usable.', done);",
    'html`<h2>${n} obstacles in order</h2>`;',
    "text('cause', [x, y], 'it tips over here');",
    "const done = ok ? '' : 'Measure again.';",
  ])('%s', (code) => {
    expect(coreTexts('a.ts', code)).toHaveLength(1);
  });

  test.each([
    "import { a } from './not a text.ts';",
    "type Word = 'goes with care' | 'does not go';",
    "const WORDS = ['goes with care', 'does not go'] as const;",
    "if (word === 'goes with care') go();",
    "const FACTORS = { 'mud to the rim': 0.75 };",
    "stroke('vehicle other', points);",
    "throw new Error('slopeOf needs one entry a point');",
    'html`<p class="soft small">${words}</p>`;',
    'const key = `${first} ${last}`;',
  ])('but not in %s', (code) => {
    expect(coreTexts('a.ts', code)).toEqual([]);
  });
});
