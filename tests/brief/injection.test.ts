import { DOMParser } from '@xmldom/xmldom';
import { describe, expect, test } from 'vitest';
import type { Outing } from '../../src/brief/brief.ts';
import { briefingOf } from '../../src/brief/brief.ts';
import { briefingPage } from '../../src/brief/page.ts';
import { text as drawn } from '../../src/draw/ink.ts';
import { asReadFromXml, INJECTIONS, obstacleSaying } from '../injections.ts';
import { matrix, order, outing, places } from './outing.ts';

/** The outing with one text in every place where a person can write one. */
function saying(text: string): Outing {
  const about = outing();
  return {
    ...about,
    name: text,
    note: text,
    obstacles: about.obstacles.map((obstacle) => obstacleSaying(obstacle, text)),
    vehicles: about.vehicles.map((vehicle) => ({ ...vehicle, name: text, driver: text })),
  };
}

function pageSaying(text: string): string {
  const about = saying(text);
  return briefingPage(briefingOf(about, places(about), matrix(about), order(about)), 'metric');
}

/** Names of elements and attributes, each once, with all text; what XML cannot hold is taken out before. */
function partsOf(markup: string): { names: string[]; text: string } {
  const xml = asReadFromXml(markup.replace(/^<!doctype html>/, ''), '');
  const faults: string[] = [];
  const parser = new DOMParser({
    onError: (level, message) => level !== 'warning' && faults.push(`${level}: ${message}`),
  });
  const page = parser.parseFromString(xml, 'text/xml');
  expect(faults).toEqual([]);
  const names = Array.from(page.getElementsByTagName('*')).flatMap((one) => [
    one.tagName,
    ...Array.from(one.attributes, ({ name }) => `${one.tagName}@${name}`),
  ]);
  return {
    names: [...new Set(names)].sort(),
    text: asReadFromXml(page.documentElement?.textContent ?? '', ''),
  };
}

const plain = partsOf(pageSaying('plain'));

describe('on the page that is printed', () => {
  test.each(Object.entries(INJECTIONS))('%s stays text', (_, text) => {
    const { names, text: said } = partsOf(pageSaying(text));
    expect(names).toEqual(plain.names);
    expect(said).toContain(asReadFromXml(text, ''));
  });

  test('there is no place for a script, a frame or an address', () => {
    expect(
      plain.names.filter((name) => /script|frame|object|embed|@on|@href|@src|@style/.test(name)),
    ).toEqual([]);
  });
});

test.each(Object.entries(INJECTIONS))('%s stays text in a drawing', (_, text) => {
  const { names, text: said } = partsOf(`<svg>${drawn('size', [1, 2], text)}</svg>`);
  expect(names).toEqual(['svg', 'text', 'text@class', 'text@text-anchor', 'text@x', 'text@y']);
  expect(said).toBe(asReadFromXml(text, ''));
});
