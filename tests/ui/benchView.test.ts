import { describe, expect, it } from 'vitest';
import { sideSvg } from '../../src/draw/side.ts';
import { presetNamed, stretchFrom } from '../../src/terrain/preset.ts';
import { clearanceOf } from '../../src/traverse/checks.ts';
import { benchView } from '../../src/ui/benchView.ts';
import { withValue } from '../../src/ui/groundEdit.ts';
import { PARTS } from '../../src/vehicle/body.ts';
import { classValues } from '../../src/vehicle/classes.ts';
import type { VehicleClass } from '../../src/vehicle/vehicle.ts';
import { lookAt } from '../../src/workers/bench.ts';

/** What the workbench shows of a vehicle in ruts so deep that it stands on its differentials. */
function inDeepRuts(vehicleClass: VehicleClass, depthM: number) {
  const level = stretchFrom(presetNamed('rutted climb')!, { slopeRad: 0 }, 'taped');
  const stretch = [0, 1].reduce((one, i) => withValue(one, `features.${i}.depthM`, depthM), level);
  const vehicle = {
    id: 'v',
    name: 'v',
    driver: '',
    vehicleClass,
    values: classValues(vehicleClass),
    estimated: [],
  };
  const task = {
    on: { vehicle, stretch, direction: 'as recorded' as const, trackSlope: null, offsetM: 0, ahead: 0 },
    rung: null,
    other: null,
  };
  const look = lookAt(task);
  return { look, view: benchView(look, task, null)! };
}

const DEEP = [
  ['mid-size wagon', 0.4],
  ['mid-size wagon', 0.45],
  ['full-size wagon', 0.45],
  ['dual-cab utility', 0.45],
] as const;

describe.each(DEEP)('%s in ruts %d m deep', (vehicleClass, depthM) => {
  const { look, view } = inDeepRuts(vehicleClass, depthM);

  it('stands where its limiting part has the least gap, and not where on the ground that is', () => {
    const { limit } = look.verdict;
    const parts = PARTS.flatMap((part, p) => (clearanceOf(part) === limit?.name ? [p] : []));
    expect(parts.length).toBeGreaterThan(0);
    const { gapM, record } = view.along;
    const at = (n: number) => Math.min(...parts.map((p) => gapM[PARTS.length * n + p]));
    const all = Array.from(record.stationM, (_, n) => at(n)).filter((gap) => !Number.isNaN(gap));
    expect(at(view.stood.n)).toBe(Math.min(...all));
  });

  it('has words at its gaps that do not run into each other, wide or narrow', () => {
    for (const widthPx of [640, 360]) {
      const svg = sideSvg({ ...view, sized: null, system: 'metric', widthPx, mostPx: 260 });
      const words = [
        ...svg.matchAll(/<text class="size" x="([^"]+)" y="([^"]+)" text-anchor="(\w+)">([^<]+)/g),
      ];
      const boxes = words
        .filter(([, , , , said]) => /touches|differential|belly/.test(said))
        .map(([, x, y, anchor, said]) => {
          // Noto Sans at 12 px takes 6 px a letter, measured on screen.
          const long = 6 * said.length;
          const from = Number(x) - (anchor === 'end' ? 1 : anchor === 'start' ? 0 : 0.5) * long;
          return { said, from, to: from + long, y: Number(y) };
        });
      expect(boxes.length).toBeGreaterThan(1);
      const runs = boxes.flatMap((a, i) =>
        boxes
          .slice(i + 1)
          .filter((b) => a.from < b.to && b.from < a.to && Math.abs(a.y - b.y) < 12)
          .map((b) => `${a.said} over ${b.said}`),
      );
      expect(runs).toEqual([]);
    }
  });
});
