import { describe, expect, it, test } from 'vitest';
import { acrossFrame, acrossSvg } from '../../src/draw/across.ts';
import { planFrame, planSvg } from '../../src/draw/plan.ts';
import { sideFrame, sideSvg } from '../../src/draw/side.ts';
import { axlePose, stands, stationOf, wheelLoads } from '../../src/draw/stood.ts';
import { stripScale, stripSvg } from '../../src/draw/strip.ts';
import { sweepScale, sweepSvg, toneOf } from '../../src/draw/sweep.ts';
import { expectGolden } from '../golden.ts';
import type { Scene } from './scene.ts';
import { SCENES, scene } from './scene.ts';

const metric = { other: null, sized: 0, system: 'metric' } as const;
const acrossView = (of: Scene, end: 'front' | 'rear') => ({ ...of, ...metric, end, widthPx: 400 });
const sideView = (of: Scene) => ({ ...of, ...metric, widthPx: 640, mostPx: 260 });
const planView = (of: Scene) => ({ ...of, ...metric, widthPx: 200, mostPx: 560 });
const stripView = (of: Scene) => ({ ...of, ...metric, n: of.stood.n, widthPx: 640, heightPx: 240 });
const sweepView = (of: Scene) => ({
  ...of,
  ...metric,
  upright: planFrame(planView(of)),
  stationM: stationOf(of.stood),
  errorM: 0.1,
  widthPx: 200,
});

const DRAWINGS: readonly (readonly [string, (of: Scene) => string])[] = [
  ['across-front', (of) => acrossSvg(acrossView(of, 'front'))],
  ['across-rear', (of) => acrossSvg(acrossView(of, 'rear'))],
  ['side', (of) => sideSvg(sideView(of))],
  ['plan', (of) => planSvg(planView(of))],
  ['strip', (of) => stripSvg(stripView(of))],
  ['sweep', (of) => sweepSvg(sweepView(of))],
];

describe.each(SCENES)('drawings that should not change unseen: %s', (name) => {
  test.each(DRAWINGS)('%s', (drawing, svg) => {
    expectGolden(`tests/draw/out/${drawing}-${name}.svg`, svg(scene(name)) + '\n');
  });

  test.each(DRAWINGS)('%s is all numbers, inked by classes alone', (_drawing, svg) => {
    const text = svg(scene(name));
    expect(text).not.toMatch(/NaN|Infinity|undefined|style=/);
  });
});

describe('what a picture shows is where it was worked out', () => {
  const ruts = scene('ruts-and-hole');

  it('a cut across, a side view and a plan are true to scale and turned by camber and slope', () => {
    const cut = acrossFrame(acrossView(ruts, 'front'));
    const [x0, y0] = cut.at(0, 0);
    const [x1, y1] = cut.at(1, 0);
    expect(Math.hypot(x1 - x0, y1 - y0)).toBeCloseTo(cut.pxPerM, 6);
    expect(Math.atan2(-(y1 - y0), -(x1 - x0))).toBeCloseTo(ruts.stretch.plane.camberRad!, 9);

    const side = sideFrame(sideView(ruts));
    const [sx0, sy0] = side.at(0, 0);
    const [sx1, sy1] = side.at(1, 0);
    expect(Math.hypot(sx1 - sx0, sy1 - sy0)).toBeCloseTo(side.pxPerM, 6);
    expect(Math.atan2(-(sy1 - sy0), sx1 - sx0)).toBeCloseTo(ruts.slopeRad, 9);

    const plan = planFrame(planView(ruts));
    expect(plan.at(1, 0)[1] - plan.at(2, 0)[1]).toBeCloseTo(plan.pxPerM, 9);
    expect(plan.at(0, 0)[0] - plan.at(0, 1)[0]).toBeCloseTo(plan.pxPerM, 9);
    expect(plan.stationOf(plan.yOf(1.25))).toBeCloseTo(1.25, 9);
  });

  it('a left wheel stands at the left, and tyres reach down to the ground under them', () => {
    const front = axlePose(ruts.stood, 'front');
    const { at } = acrossFrame(acrossView(ruts, 'front'));
    expect(at(front.left.yM, 0)[0]).toBeLessThan(at(front.right.yM, 0)[0]);
    for (const [i, wheel] of [front.left, front.right].entries()) {
      const ground = ruts.along.record.bottomM[4 * ruts.stood.n + i];
      const foot = wheel.hubM - wheel.downM;
      expect(foot - ground).toBeCloseTo(wheel.airM, 4);
    }
  });

  describe.each(SCENES)('wherever the vehicle stands on its way over %s', (name) => {
    const { stood, ...rest } = scene(name);
    const way = Array.from({ length: stood.along.record.length }, (_, n) => ({
      ...rest,
      stood: { ...stood, n },
    })).filter((there, n) => n % 7 === 0 && stands(there.stood));

    it('cuts across keep one frame, which holds its body', () => {
      const heights = way.flatMap((there) =>
        (['front', 'rear'] as const).map((end) => {
          const { heightPx, topM } = acrossFrame(acrossView(there, end));
          expect(topM).toBeGreaterThan(axlePose(there.stood, end).bodyM);
          return heightPx;
        }),
      );
      expect(new Set(heights).size).toBe(1);
    });

    it('the side view keeps its scale and height', () => {
      const frames = way.map((there) => {
        const { heightPx, pxPerM } = sideFrame(sideView(there));
        return `${heightPx.toFixed(6)} ${pxPerM.toFixed(6)}`;
      });
      expect(new Set(frames).size).toBe(1);
    });

    it('words of gaps stand in the ground, under the wheels', () => {
      for (const there of way) {
        const view = sideView(there);
        const { at } = sideFrame(view);
        const { values, along, n } = there.stood;
        const feet = [0, 1, 2, 3].map((i) => {
          const xM = stationOf(there.stood) + (i < 2 ? 0.5 : -0.5) * values.wheelbaseM;
          return at(xM, along.record.bottomM[4 * n + i]);
        });
        const words = [...sideSvg(view).matchAll(/<g class="gap.*?<text class="size" x="(.*?)" y="(.*?)"/g)];
        for (const [, x, y] of words)
          for (const [footX, footY] of feet)
            if (Math.abs(Number(x) - footX) < 8) expect(Number(y)).toBeGreaterThan(footY + 8);
      }
    });
  });

  it('bars of the four loads add up to the weight on the plane', () => {
    const loads = wheelLoads(ruts.stood);
    const rest = loads.reduce((sum, { restShare }) => sum + restShare, 0);
    expect(rest * 0.6).toBeCloseTo(1, 3);
    expect(loads.every(({ share }) => share >= 0 && share <= 1)).toBe(true);
  });

  it('strip and sweep go from pixel to place and back', () => {
    const strip = stripScale(stripView(ruts));
    for (const s of [-3, 0, 2.5]) expect(strip.stationOf(strip.xOf(s))).toBeCloseTo(s, 9);
    const sweep = sweepScale(sweepView(ruts));
    for (const offset of [-0.2, 0, 0.3]) expect(sweep.offsetOf(sweep.xOf(offset))).toBeCloseTo(offset, 9);
    expect(sweep.xOf(0.2)).toBeLessThan(sweep.xOf(-0.2));
  });

  it('the strip tells the nearest to its limit of what has no curve, where it is', () => {
    const [, side] = [
      ...stripSvg(stripView(ruts)).matchAll(
        /class="title"[^>]*>([^<]*)<\/text><text class="cause[^>]*>([^<]*)</g,
      ),
    ]
      .map(([, title, words]) => [title, words])
      .filter(([title]) => title === 'All else')[0];
    expect(side).toBe('rear wheels slide to the right: 0.12 short');
    const soft = {
      ...ruts.along.limits[0],
      name: 'soft ground',
      margin: -2e5,
      tolerance: 1e4,
      stationM: 1,
    } as const;
    const told = stripSvg({
      ...stripView(ruts),
      checks: [...ruts.checks, { ...soft, quantity: 'pressure', cause: 'soft ground gives way' }],
    });
    expect(told).toContain('soft ground gives way: ');
    expect(stripSvg({ ...stripView(ruts), checks: [] })).toContain('nothing else to meet');
  });

  it('a tone never says more than its margin', () => {
    expect(toneOf(-0.001)).toBe(-1);
    expect(toneOf(0)).toBe(0);
    expect(toneOf(0.999)).toBe(0);
    expect(toneOf(1)).toBe(1);
    expect(toneOf(50)).toBe(4);
    expect(toneOf(NaN)).toBe(-1);
  });

  it('in imperial the sizes are in inches', () => {
    const svg = acrossSvg({ ...acrossView(ruts, 'front'), system: 'imperial' });
    expect(svg).toContain(' in<');
    expect(svg).not.toContain(' cm<');
  });

  it('where the vehicle does not stand, it is said and not drawn', () => {
    const { record } = ruts.along;
    const tipped = { ...ruts.along, record: { ...record, standing: record.standing.map(() => 1) } };
    const over = { ...ruts, along: tipped, stood: { ...ruts.stood, along: tipped } };
    for (const svg of [acrossSvg(acrossView(over, 'rear')), sideSvg(sideView(over))]) {
      expect(svg).toContain('it tips over here');
      expect(svg).not.toContain('class="vehicle"');
    }
  });
});
