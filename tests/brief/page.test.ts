import { XMLParser, XMLValidator } from 'fast-xml-parser';
import { format } from 'prettier';
import { describe, expect, test } from 'vitest';
import { briefingOf } from '../../src/brief/brief.ts';
import { CAUTIONS } from '../../src/brief/cautions.ts';
import { briefingPage } from '../../src/brief/page.ts';
import { expectGolden } from '../golden.ts';
import { matrix, outing, places } from './outing.ts';

function page(about = outing(), system: 'metric' | 'imperial' = 'metric'): string {
  return briefingPage(briefingOf(about, places(about), matrix(about)), system);
}

/** What a reader sees, without style and markup. */
function wordsOf(markup: string): string {
  const body = markup.slice(markup.indexOf('<body>'));
  return body
    .replace(/<[^>]*>/g, ' ')
    .replace(/&#(\d+);/g, (_, code: string) => String.fromCharCode(Number(code)))
    .replace(/\s+/g, ' ');
}

describe('the page', () => {
  test('is as it was', async () => {
    const text = await format(page(), { parser: 'html', printWidth: 110, singleQuote: true });
    expectGolden('tests/brief/out/briefing.html', text);
  });

  test('is well-formed and reaches for nothing outside itself', () => {
    const markup = page();
    expect(XMLValidator.validate(markup.replace('<!doctype html>', ''))).toBe(true);
    expect(markup).not.toMatch(/\b(?:src|href)=|url\(|@import|<script/);
  });

  test('says every caution, every verdict and every name', () => {
    const words = wordsOf(page());
    for (const caution of CAUTIONS) expect(words).toContain(caution);
    for (const said of ['Kestrel', 'Wren', 'Teal', 'Everything at once', 'Second', 'Walk it first.'])
      expect(words).toContain(said);
    for (const word of ['goes', 'needs a pull', 'does not go', 'needs momentum', 'not known'])
      expect(words).toContain(word);
  });

  test('tells the side of an offset line as the convoy comes to it', () => {
    expect(wordsOf(page())).toContain('left of the ruts (40 cm to the left of the main line)');
    const back = wordsOf(page(outing('reversed')));
    expect(back).toContain('left of the ruts (40 cm to the right of the main line)');
    expect(back).toContain('Against the recorded direction.');
  });

  test('lets nothing that a person typed become markup', () => {
    const typed = `</h1><script>alert("1")</script> & 'x' <b`;
    const about = outing('as recorded', typed);
    const hostile = {
      ...about,
      note: typed,
      obstacles: about.obstacles.map((one) => ({ ...one, name: typed, note: typed })),
      vehicles: about.vehicles.map((one) => ({ ...one, name: typed, driver: typed })),
    };
    const markup = page(hostile);
    expect(XMLValidator.validate(markup.replace('<!doctype html>', ''))).toBe(true);
    expect(JSON.stringify(new XMLParser().parse(markup))).not.toContain('"script"');
    expect(wordsOf(markup).split(typed).length).toBeGreaterThan(20);
  });

  test('speaks one system of units', () => {
    expect(wordsOf(page())).not.toMatch(/\d (?:ft|in(?! \d)|lbf|lb|mph|psi|mi)\b/);
    expect(wordsOf(page(outing(), 'imperial'))).not.toMatch(/\d (?:m|cm|kN|kg|km|km\/h|kPa)\b/);
  });

  test('says so where there is nothing to judge', () => {
    const about = { ...outing(), vehicles: [], obstacles: [] };
    expect(wordsOf(page(about))).toContain('nothing is judged');
  });
});
