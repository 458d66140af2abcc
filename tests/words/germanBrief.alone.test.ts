import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, test, vi } from 'vitest';
import { de } from '../../src/words/de/de.ts';
import { en } from '../../src/words/en/en.ts';
import { answerOf, leavesOf } from './leaves.ts';

let page = '';
let words = '';

/** What a reader sees of a page, words in drawings too. */
function wordsOf(markup: string): string {
  return markup
    .slice(markup.indexOf('<body>'))
    .replace(/<[^>]*>/g, ' ')
    .replace(/&#(\d+);/g, (_, code: string) => String.fromCharCode(Number(code)))
    .replace(/\s+/g, ' ');
}

/**
 * The printed sheet and cards of a trip with every kind of obstacle, met against the recorded direction, in modules that
 * are loaded after German is spoken. Names are letters and numbers, so that no word of the page is typed.
 */
beforeAll(async () => {
  vi.resetModules();
  const { speak } = await import('../../src/words/words.ts');
  speak('de', de);
  const { readTrip } = await import('../../src/archive/share.ts');
  const { PRESETS, stretchFrom } = await import('../../src/terrain/preset.ts');
  const { VEHICLE_CLASSES } = await import('../../src/vehicle/vehicle.ts');
  const { classValues } = await import('../../src/vehicle/classes.ts');
  const { matrixOf } = await import('../../src/convoy/matrix.ts');
  const { orderFor } = await import('../../src/convoy/passes.ts');
  const { placesOn } = await import('../../src/convoy/places.ts');
  const { briefingOf } = await import('../../src/brief/brief.ts');
  const { briefingPage } = await import('../../src/brief/page.ts');
  const { gradeToldOf } = await import('../../src/brief/gradeTold.ts');

  const read = readTrip(readFileSync('tests/archive/in/version-1.json', 'utf8')).value!;
  const [one] = read.obstacles;
  const wide = { ...one.stretch.corridor, leftBound: 'drop' as const };
  const made = PRESETS.flatMap((preset, i) =>
    [rad(-24), rad(18)].map((slopeRad, k) => {
      const stretch = { ...stretchFrom(preset, { slopeRad }), corridor: wide };
      const main = { id: 'main', kind: 'main' as const, name: '0', offsetM: 0 };
      const offset = { id: 'offset', kind: 'offset' as const, name: '1', offsetM: 0.4 };
      const id = `P${i}K${k}`;
      return { ...one, id, name: id, preset: preset.name, note: '', stretch, lines: [main, offset] };
    }),
  );
  const obstacles = [...made, { ...one, name: '99', note: '' }].map((obstacle, i) => ({
    ...obstacle,
    stationM: 10 * i,
    photos: [],
    lines: obstacle.lines.map((line, k) => ({ ...line, name: String(k) })),
  }));
  const vehicles = VEHICLE_CLASSES.filter((_, i) => i % 2 === 0).flatMap((vehicleClass, i) => {
    const values = { ...classValues(vehicleClass), winchN: i === 0 ? 40e3 : 0, ropeM: 20, straps: i === 1 };
    const own = { id: String(i), name: `V${i}`, driver: '', vehicleClass, values, estimated: [] };
    return i === 1 ? [own, { ...own, id: 'x', name: 'VX', values: { ...values, massKg: NaN } }] : [own];
  });
  const direction = 'reversed';
  const track = read.track && { ...read.track, name: 'T1' };
  const outing = { ...read, track, name: '', note: '', direction, obstacles, vehicles } as const;
  const places = placesOn(outing.track, obstacles);
  const matrix = matrixOf(places, vehicles, direction);
  const order = orderFor(places.slice(0, 2), vehicles, direction);
  const told = gradeToldOf(outing, 'australia', 'dry');
  page = briefingPage(briefingOf(outing, places, matrix, order, told), 'metric');
  words = wordsOf(page);
}, 120_000);

function rad(degrees: number): number {
  return (degrees * Math.PI) / 180;
}

describe('the printed sheet and cards in German', () => {
  test('say verdicts and cautions', () => {
    const { 'needs momentum': rare, ...others } = de.verdict;
    for (const verdict of Object.values(others)) expect(words).toContain(verdict);
    expect(rare).toBe('braucht Schwung');
    for (const caution of de.cautions) expect(words).toContain(caution);
  });

  test('have no English sentence left', () => {
    const german = leavesOf(de).flatMap((leaf) => answerOf(leaf)?.parts ?? []);
    const phrases = leavesOf(en)
      .flatMap((leaf) => answerOf(leaf)?.parts ?? [])
      .map((part) => part.trim())
      .filter((part) => (part.match(/\p{L}+/gu) ?? []).length >= 3 && !german.includes(part));
    expect(phrases.length).toBeGreaterThan(500);
    expect(phrases.filter((phrase) => words.includes(phrase))).toEqual([]);
  });

  test('have no English word that German does not have', () => {
    const left = words.match(
      /\b(the|and|with|of|left|right|wheels?|slope|camber|goes|pull|line|track|front|rear|not)\b/g,
    );
    expect(left).toBeNull();
  });

  test('write numbers with a comma, and leave the drawings theirs', () => {
    expect(words).toMatch(/\d,\d\d m/);
    expect(words).toMatch(/\d,\d°/);
    expect(words.match(/\d\.\d{1,2}(?!\d|\.)[^\d]{0,6}/g)).toBeNull();
    expect(page.match(/\b(?:d|viewBox|x|y|width|height)="[^"]*,[^"]*"/g)).toBeNull();
    expect(page).toContain('<html lang="de">');
  });
});
