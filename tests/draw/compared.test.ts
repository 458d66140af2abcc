import { describe, expect, it } from 'vitest';
import { acrossFrame, acrossSvg } from '../../src/draw/across.ts';
import { planFrame, planSvg } from '../../src/draw/plan.ts';
import { sideFrame, sideSvg } from '../../src/draw/side.ts';
import type { Stood } from '../../src/draw/stood.ts';
import { stationOf } from '../../src/draw/stood.ts';
import { nearestStation } from '../../src/traverse/along.ts';
import { scene } from './scene.ts';

const ruts = scene('ruts-and-hole');
/** A larger vehicle where the own stands, in the pose that it has on other ground. */
const larger: Stood = (({ stood }) => ({
  ...stood,
  n: nearestStation(stood.along.record, stationOf(ruts.stood)),
  values: { ...stood.values, widthM: 2.2, tyreDiameterM: 0.9, wheelbaseM: 3.3, frontOverhangM: 1.1 },
}))(scene('step-and-log'));

type Compared = (stood: Stood, other: Stood | null) => string;

const metric = { ...ruts, sized: 0, system: 'metric', mostPx: 400 } as const;
const both = { ...metric, other: larger };
const across = (end: 'front' | 'rear'): Compared => {
  const frame = acrossFrame({ ...both, end, widthPx: 400 });
  return (stood, other) => acrossSvg({ ...metric, stood, other, end, widthPx: 400 }, frame);
};
/** Each in the frame of both, so that what is drawn of one vehicle can be held against the same alone. */
const DRAWINGS: readonly (readonly [string, Compared])[] = [
  ['cut across under the front axle', across('front')],
  ['cut across under the rear axle', across('rear')],
  [
    'side view',
    (stood, other) =>
      sideSvg({ ...metric, stood, other, widthPx: 640 }, sideFrame({ ...both, widthPx: 640 })),
  ],
  [
    'plan',
    (stood, other) =>
      planSvg({ ...metric, stood, other, widthPx: 200 }, planFrame({ ...both, widthPx: 200 })),
  ],
];

/** Outlines of vehicles as they follow each other, by class. */
const outlines = (svg: string) =>
  [...svg.matchAll(/<g class="(vehicle[^"]*)">(.*?)<\/g>/g)].map(([, name, paths]) => ({ name, paths }));

describe.each(DRAWINGS)('two vehicles compared: %s', (_name, svg) => {
  const [other, own] = outlines(svg(ruts.stood, larger));

  it('holds the outline of the other under that of the own', () => {
    expect(outlines(svg(ruts.stood, larger)).map(({ name }) => name)).toEqual(['vehicle other', 'vehicle']);
    expect(outlines(svg(ruts.stood, null)).map(({ name }) => name)).toEqual(['vehicle']);
  });

  it('draws the other in its own pose and size, as it is drawn alone, and leaves the own as it is', () => {
    const alone = (stood: Stood) => outlines(svg(stood, null))[0].paths;
    expect(other.paths).toBe(alone(larger));
    expect(own.paths).toBe(alone(ruts.stood));
    expect(other.paths).not.toBe(own.paths);
  });
});

describe('two vehicles compared', () => {
  /** Points of the bodies: of the other, and of the own. */
  const bodies = (svg: string) =>
    outlines(svg).map(({ paths }) => {
      const [, body] = /class="body" d="(.*?)"/.exec(paths)!;
      return [...body.matchAll(/([-\d.]+) ([-\d.]+)/g)].map(([, x, y]) => [Number(x), Number(y)] as const);
    });

  it('are as wide from above as they are', () => {
    const frame = planFrame({ ...both, widthPx: 200 });
    const widths = bodies(planSvg({ ...both, widthPx: 200 }, frame)).map((points) => {
      const xs = points.map(([x]) => x);
      return (Math.max(...xs) - Math.min(...xs)) / frame.pxPerM;
    });
    expect(widths[0]).toBeCloseTo(2.2, 1);
    expect(widths[1]).toBeCloseTo(ruts.stood.values.widthM, 1);
  });

  it('draw a cut across wide enough for the wider one, and a side view for the longer one', () => {
    for (const [svg, widthPx] of [
      [acrossSvg({ ...both, end: 'front', widthPx: 400 }), 400],
      [sideSvg({ ...both, widthPx: 640 }), 640],
    ] as const) {
      const heightPx = Number(/height="(.*?)"/.exec(svg)![1]);
      for (const [x, y] of bodies(svg)[0]) {
        expect(x).toBeGreaterThan(0);
        expect(x).toBeLessThan(widthPx);
        expect(y).toBeGreaterThan(0);
        expect(y).toBeLessThan(heightPx);
      }
    }
  });

  it('where the other does not stand, the own is drawn alone', () => {
    const { record } = larger.along;
    const fallen = { ...larger.along, record: { ...record, standing: record.standing.map(() => 1) } };
    const svg = sideSvg({ ...metric, other: { ...larger, along: fallen }, widthPx: 640 });
    expect(outlines(svg).map(({ name }) => name)).toEqual(['vehicle']);
  });
});
