import { XMLParser, XMLValidator } from 'fast-xml-parser';
import { format } from 'prettier';
import { describe, expect, test } from 'vitest';
import { briefingOf } from '../../src/brief/brief.ts';
import { CAUTIONS } from '../../src/brief/cautions.ts';
import { briefingPage } from '../../src/brief/page.ts';
import { expectGolden } from '../golden.ts';
import { matrix, order, outing, places } from './outing.ts';

function page(about = outing(), system: 'metric' | 'imperial' = 'metric'): string {
  return briefingPage(briefingOf(about, places(about), matrix(about), order(about)), system);
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
    expect(wordsOf(page())).toContain('40 cm left of main line');
    const back = wordsOf(page(outing('reversed')));
    expect(back).toContain('40 cm right of main line');
    expect(back).not.toContain('40 cm left of main line');
    expect(back).toContain('Against the recorded direction.');
  });

  test('says the order with its reasons, and that it is not the one entered', () => {
    const words = wordsOf(page());
    expect(words).toContain('Not the order as entered');
    expect(words.indexOf('reason of Teal')).toBeLessThan(words.indexOf('reason of Kestrel'));
    const about = outing();
    const entered = { ...order(about), vehicleIds: about.vehicles.map(({ id }) => id) };
    const same = briefingPage(briefingOf(about, places(about), matrix(about), entered), 'metric');
    expect(wordsOf(same)).toContain('The convoy as entered in which most go unaided');
  });

  test('draws the track with its obstacles numbered, and the long section', () => {
    const markup = page();
    expect(markup.match(/class="drawing sheet"/g)).toHaveLength(1);
    expect(markup.match(/class="drawing profile"/g)).toHaveLength(1);
    expect(markup.match(/class="flag-number"[^>]*>2</g)).toHaveLength(2);
  });

  test('names who pulls whom, and who is not through', () => {
    const words = wordsOf(page());
    expect(words).toMatch(/1 Everything at once, Wren , about [\d.]+ kN: Kestrel by winch/);
    expect(words).toContain('Not through on any line: Kestrel at 2 (does not go); Teal at 2 (not known).');
  });

  test('sets each card its line in a sketch, its speed, its spotter and what to do if it stops', () => {
    const markup = page();
    const [, wren] = markup.split('<article class="card">').slice(1);
    const words = wordsOf(`<body>${wren}`);
    expect(wren.match(/class="drawing sketch"/g)).toHaveLength(2);
    for (const said of [
      'Wren, Driver of Wren',
      'enter at 7 km/h at least',
      'Spotter',
      'If it stops, uphill:',
    ])
      expect(words).toContain(said);
    expect(words).toMatch(/Pull of about [\d.]+ kN: Kestrel by winch/);
  });

  test('says the radio channel on the sheet and on every card, and leaves a line for one that is not agreed', () => {
    const about = outing();
    expect(wordsOf(page(about)).split('Radio channel: UHF 18')).toHaveLength(2 + about.vehicles.length);
    expect(page(about)).not.toContain('class="blank"');
    const without = page({ ...about, radioChannel: '' });
    expect(wordsOf(without).split('Radio channel:')).toHaveLength(2);
    expect(without.match(/class="blank"/g)).toHaveLength(1);
  });

  test('counts what a driver takes as it comes among the others, in a line of its own', () => {
    const [kestrel] = page().split('<article class="card">').slice(1);
    const words = wordsOf(`<body>${kestrel}`);
    expect(words).toMatch(/1 Everything at once 0.10 km as it comes 2 Second 0.20 km/);
    expect(words).toContain('As it comes: nothing to engage, on the main line.');
  });

  test('tells a driver to stop before what does not go, and draws no line into it', () => {
    const [kestrel] = page().split('<article class="card">').slice(1);
    const words = wordsOf(`<body>${kestrel}`);
    expect(words).toContain('Stop before it; ask the leader.');
    expect(kestrel).not.toContain('class="drawing sketch"');
    expect(words).not.toContain('Spotter');
  });

  test('prints nothing under 10.5 points but the caption and the drawings’ own words', () => {
    const sizes = [...page().matchAll(/font(?:-size)?:\s*([\d.]+)pt/g)].map(([, size]) => Number(size));
    expect(sizes.length).toBeGreaterThan(3);
    expect(sizes.filter((size) => size < 10.5)).toEqual([9]);
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
