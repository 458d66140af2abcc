import { describe, expect, test } from 'vitest';
import { matrixParts } from '../../src/brief/matrixColumns.ts';
import { parted, widestWord } from '../../src/brief/wordWidth.ts';

const NAMES = { bold: ['Obstacle', '1 First ford'], regular: [] };
const column = (bold: string) => ({
  bold: [bold, 'needs momentum,'],
  regular: [': low range, centre locked'],
});

describe('the columns of the matrix', () => {
  test('stand in one table where all words fit across the page', () => {
    const parts = matrixParts(
      NAMES,
      Array.from({ length: 5 }, () => column('Bracken')),
    );
    expect(parts.map(({ from, to }) => [from, to])).toEqual([[0, 5]]);
  });

  test('go on in further tables of as many vehicles, where they do not', () => {
    const parts = matrixParts(
      NAMES,
      Array.from({ length: 12 }, () => column('Bracken')),
    );
    expect(parts.map(({ from, to }) => [from, to])).toEqual([
      [0, 6],
      [6, 12],
    ]);
  });

  test('take the whole page between them, more where there are longer words', () => {
    const [{ shares }] = matrixParts(NAMES, [column('Blue'), column('Thunderstruck-all')]);
    expect(shares.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 9);
    expect(shares[2]).toBeGreaterThan(shares[1]);
  });

  test('hold one vehicle at least, whatever its name', () => {
    const parts = matrixParts(NAMES, [column('W'.repeat(400)), column('Blue')]);
    expect(parts.length).toBeLessThanOrEqual(2);
    expect(matrixParts(NAMES, [])).toHaveLength(1);
  });
});

describe('a long word', () => {
  test.each([
    ['Feuerwehrgerätehauszufahrt', 'Feuer-wehr-ge-rä-te-haus-zu-fahrt'],
    ['Verschränkungsmulden', 'Ver-schrän-kungs-mulden'],
    ['Misunderstanding Hill', 'Misunderstanding Hill'],
  ])('%s may be parted: %s', (text, shown) => {
    expect(parted(text).replaceAll('\u00ad', '-')).toBe(shown);
  });

  test('without syllables may be parted, too', () => {
    expect(widestWord(parted('x'.repeat(300)), 'bold')).toBeLessThan(12);
  });
});
