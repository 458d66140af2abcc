import { describe, expect, test } from 'vitest';
import { de } from '../../src/words/de/de.ts';
import { en } from '../../src/words/en/en.ts';
import type { Leaf } from './leaves.ts';
import { answerOf, leavesOf } from './leaves.ts';

const english = leavesOf(en);
const german = new Map(leavesOf(de).map((leaf) => [leaf.path, leaf]));
const pairs = english.map((leaf): [string, Leaf, Leaf] => [leaf.path, leaf, german.get(leaf.path)!]);

/** Texts that are the same in both languages, word for word. */
const SAME = new Set([
  '',
  '?',
  'U',
  'V',
  'N',
  'Name',
  'Station',
  'Imperial (in, ft, lb)',
  'GeoPackage',
  'GeoJSON',
]);

test('both languages have the same entries', () => {
  expect([...german.keys()].sort()).toEqual(english.map(({ path }) => path).sort());
  expect(english.length).toBeGreaterThan(500);
});

test('every German text differs from the English one, or is known to be the same', () => {
  const same = pairs.filter(
    ([, one, other]) => typeof one.value === 'string' && one.value === other.value && !SAME.has(one.value),
  );
  expect(same.map(([path, { value }]) => `${path} is “${String(value)}” in both languages.`)).toEqual([]);
});

describe('a text with values', () => {
  const made = pairs.filter(([, { value }]) => typeof value === 'function');

  test('is a text in both languages, and says in German every value that it says in English', () => {
    const faults = made.flatMap(([path, one, other]) => {
      const [said, gesagt] = [answerOf(one), answerOf(other)];
      if (said === null || gesagt === null) return [`${path} answers no text.`];
      const lost = said.kept.filter((value) => !gesagt.kept.includes(value));
      return lost.map((value) => `${path} loses ${value} in German: “${gesagt.text}”, of “${said.text}”.`);
    });
    expect(faults).toEqual([]);
  });

  test('differs in German, but where it is made of its values alone', () => {
    const same = made.filter(([, one, other]) => {
      const [said, gesagt] = [answerOf(one)!, answerOf(other)!];
      return said.text === gesagt.text && said.parts.some((part) => /\p{L}{3}/u.test(part));
    });
    expect(same.map(([path]) => path)).toEqual([]);
  });

  test('is a text for one and for many', () => {
    const faults = made.flatMap(([path, one, other]) =>
      [1, 2].flatMap((count) =>
        [one, other].flatMap((leaf) =>
          answerOf(leaf, count) === null ? [`${path} answers no text for ${count}.`] : [],
        ),
      ),
    );
    expect(faults).toEqual([]);
  });
});
