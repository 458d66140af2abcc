import { expect, test } from 'vitest';
import type { Point } from '../../src/draw/ink.ts';
import type { SizeMark } from '../../src/draw/sizes.ts';
import { rutFields } from '../../src/terrain/rut.ts';
import type { Feature } from '../../src/terrain/feature.ts';
import type { Handle } from '../../src/ui/handles.ts';
import {
  handlesOn,
  holdOf,
  isUpright,
  nearestHandle,
  settled,
  valueAfterKey,
  valueAt,
} from '../../src/ui/handles.ts';
import { ledgeFields } from '../../src/terrain/ledge.ts';
import { rad } from '../../src/units.ts';

const RUT: Feature = {
  kind: 'rut',
  centreYM: 0.75,
  widthM: 0.5,
  depthM: 0.333,
  fromM: -4,
  toM: 4,
  runM: 1,
  section: 'U',
};

/** 100 pixels a metre down the page. */
const depth: Handle = {
  id: '0.depthM',
  feature: 0,
  label: 'Depth of rut 1',
  path: 'features.0.depthM',
  field: rutFields.depthM,
  value: 0.333,
  placeOf: (value) => [50, 100 * value],
  towards: 'down',
};

const mark = (feature: number, name: 'fromM' | 'toM' | 'depthM', first: boolean): SizeMark => ({
  feature,
  name,
  field: rutFields[name],
  value: RUT[name],
  first,
  towards: 'up',
  placeOf: (value) => [0, value],
  from: null,
});

test('a value is set on whole centimetres, half inches and degrees, within its range', () => {
  expect(settled(0.3333, rutFields.depthM, 'metric')).toBeCloseTo(0.33, 9);
  expect(settled(0.33, rutFields.depthM, 'imperial')).toBeCloseTo(13 * 0.0254, 6);
  expect(settled(9, rutFields.depthM, 'metric')).toBe(rutFields.depthM.max);
  expect(settled(-9, rutFields.depthM, 'metric')).toBe(rutFields.depthM.min);
  expect(settled(rad(44.6), ledgeFields.faceRad, 'metric')).toBeCloseTo(rad(45), 5);
});

test('a value follows the hand; a hand that hardly moves leaves it as it was got', () => {
  expect(valueAt(depth, [50, 50], 'metric')).toBeCloseTo(0.5, 9);
  expect(valueAt(depth, [90, 33.6], 'metric')).toBe(0.333);
  expect(valueAt(depth, [50, -400], 'metric')).toBe(rutFields.depthM.min);
});

test('arrow keys move a handle as it is drawn; across its way, up and right are more', () => {
  expect(isUpright(depth)).toBe(true);
  expect(valueAfterKey({ ...depth, value: 0.3 }, 0, 1, 'metric')).toBeCloseTo(0.31, 9);
  expect(valueAfterKey({ ...depth, value: 0.3 }, 0, -5, 'metric')).toBeCloseTo(0.25, 9);
  expect(valueAfterKey({ ...depth, value: 0.3 }, 1, 0, 'metric')).toBeCloseTo(0.31, 9);
  const rightwards: Handle = { ...depth, value: 0.3, placeOf: (value): Point => [-100 * value, 0] };
  expect(isUpright(rightwards)).toBe(false);
  expect(valueAfterKey(rightwards, 1, 0, 'metric')).toBeCloseTo(0.29, 9);
  expect(valueAfterKey(rightwards, 0, -1, 'metric')).toBeCloseTo(0.31, 9);
});

test('a thumb has 44 pixels, and where holds cover each other the nearest grip is meant', () => {
  expect(holdOf(depth).px).toBe(44);
  const up: Handle = { ...depth, id: 'up', towards: 'up' };
  const [x, y] = depth.placeOf(depth.value);
  expect(nearestHandle([depth, up], [x, y + 5])?.id).toBe(depth.id);
  expect(nearestHandle([depth, up], [x, y - 5])?.id).toBe('up');
  expect(nearestHandle([up, depth], [x + 100, y])).toBeUndefined();
});

test('of every shape the most telling size is held, of the chosen one all', () => {
  const marks = [0, 1].flatMap((i) => [mark(i, 'depthM', true), mark(i, 'toM', false)]);
  const ids = (chosen: number | null) => handlesOn(marks, [RUT, RUT], chosen).map(({ id }) => id);
  expect(ids(1)).toEqual(['0.depthM', '1.depthM', '1.toM']);
  expect(ids(null)).toEqual(['0.depthM', '0.toM', '1.depthM']);
  expect(ids(7)).toEqual(ids(null));
});

test('no end of a shape can be dragged past the other', () => {
  const [from, to] = handlesOn([mark(0, 'fromM', true), mark(0, 'toM', false)], [RUT], 0);
  expect(settled(50, from.field, 'metric')).toBeCloseTo(3.9, 9);
  expect(settled(-50, to.field, 'metric')).toBeCloseTo(-3.9, 9);
});
