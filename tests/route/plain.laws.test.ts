import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readGpx } from '../../src/route/gpx.ts';

const folder = 'tests/route/in';
const fixtures = readdirSync(folder)
  .filter((name) => name.endsWith('.gpx'))
  .map((name) => readFileSync(`${folder}/${name}`, 'utf8'));
const demo = readFileSync('public/demo/hobnail-spur.gpx', 'utf8').slice(0, 40_000);

/** What is read. In which line text behind the root is noticed depends on where the text was cut, so that is left out. */
async function read(text: string) {
  const { value, problems } = await readGpx(new TextEncoder().encode(text));
  const behind = (what: string) => what.startsWith('Something stands after the end');
  return { value, problems: problems.map((one) => (behind(one.what) ? { ...one, where: '' } : one)) };
}

/** The same document to XML, with no point left that is read beside the parser. */
function unplain(text: string): string {
  return text.replaceAll('<trkpt ', '<trkpt\t');
}

/** No NUL: it is faulted when it comes, which may be just behind the place where reading stopped. */
const PIECES = [
  '<',
  '>',
  '"',
  '&',
  '&amp;',
  ' ',
  '\n',
  '</trkpt>',
  '<trkpt ',
  '<!-- ',
  ' -->',
  '<ele>',
  'lat="1" ',
  ']]>',
  'x',
];

describe('points that are read beside the parser', () => {
  it.each(fixtures.map((text, i) => [i, text] as const))(
    'are those that the parser reads, in file %d',
    async (_, text) => {
      expect(await read(text)).toEqual(await read(unplain(text)));
    },
  );

  it('are those that the parser reads, however the file is damaged', async () => {
    // Beyond the XML declaration, in which a tab is not read as a blank is.
    const place = fc.integer({ min: 200, max: 6_000 });
    const damage = fc.record({ at: place, cut: fc.nat({ max: 60 }), put: fc.constantFrom('', ...PIECES) });
    await fc.assert(
      fc.asyncProperty(
        fc.constantFrom(demo, ...fixtures),
        fc.array(damage, { maxLength: 3 }),
        async (text, damages) => {
          let damaged = text;
          for (const { at, cut, put } of damages)
            damaged = damaged.slice(0, at) + put + damaged.slice(at + cut);
          expect(await read(damaged)).toEqual(await read(unplain(damaged)));
        },
      ),
      { seed: 20269, numRuns: 4000 },
    );
  }, 120_000);
});
