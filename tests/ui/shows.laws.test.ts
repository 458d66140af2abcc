import { DOMParser, XMLSerializer } from '@xmldom/xmldom';
import { expect, test } from 'vitest';
import { acrossSvg } from '../../src/draw/across.ts';
import { escaped, text } from '../../src/draw/ink.ts';
import { sideSvg } from '../../src/draw/side.ts';
import { stripSvg } from '../../src/draw/strip.ts';
import { shows } from '../../src/ui/shows.ts';
import { SCENES, scene } from '../draw/scene.ts';

const parsed = (svg: string) => new DOMParser().parseFromString(svg, 'text/xml');

/** What of an element the action asks for, on a document of XML; counts how often all of it was replaced. */
class Element {
  #shown = parsed('<svg/>');
  replaced = 0;

  set innerHTML(svg: string) {
    this.#shown = parsed(svg);
    this.replaced++;
  }

  querySelectorAll(all: '*') {
    return Array.from(this.#shown.getElementsByTagName(all));
  }

  get text(): string {
    return new XMLSerializer().serializeToString(this.#shown);
  }
}

const textOf = (svg: string) => new XMLSerializer().serializeToString(parsed(svg));

function showing(first: string) {
  const element = new Element();
  return { element, action: shows(element as unknown as HTMLElement, first) };
}

/** The drawings of a vehicle that goes along its line, one obstacle after the other; a shape is looked at in the first third. */
const drives = SCENES.flatMap((name) => {
  const of = scene(name);
  const { length } = of.along.record;
  return Array.from({ length }, (_, n) => {
    const stood = { ...of.stood, n };
    return { ...of, stood, n, other: null, sized: n < length / 3 ? 0 : null, system: 'metric' } as const;
  });
});

test.each([
  ['cut across', (view) => acrossSvg({ ...view, end: 'front', widthPx: 400 })],
  ['side view', (view) => sideSvg({ ...view, widthPx: 640, mostPx: 260 })],
  ['margins', (view) => stripSvg({ ...view, widthPx: 640, heightPx: 240 })],
] satisfies [string, (view: (typeof drives)[number]) => string][])(
  'whatever was shown before, what is shown is the drawing: %s',
  (_name, draw) => {
    const { element, action } = showing(draw(drives[0]));
    for (const view of drives.slice(1)) {
      action.update(draw(view));
      expect(element.text).toBe(textOf(draw(view)));
    }
    expect(element.replaced).toBeLessThan(drives.length / 2);
  },
);

test('words that look like a tag or a mark of one are shown as they are', () => {
  const words = ['plain', 'a < b & "c" > d', '&lt;b&gt;', '', '</text><script>', '&amp;amp;', ''];
  const svg = (one: string) =>
    `<svg>${text('size', [1, 2], one)}<path class="${escaped(one)}" d="M0 0"/></svg>`;
  const { element, action } = showing(svg(words[0]));
  for (const one of words) {
    action.update(svg(one));
    expect(element.text).toBe(textOf(svg(one)));
  }
  expect(element.replaced).toBe(1);
});

test('a drawing made up of other parts takes the place of the one before', () => {
  const { element, action } = showing('<svg/>');
  for (const svg of ['<svg><g><path d="M0 0"/></g></svg>', '<svg><g/><path d="M0 0"/></svg>']) {
    action.update(svg);
    expect(element.text).toBe(textOf(svg));
  }
});
