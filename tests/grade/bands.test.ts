import { describe, expect, it } from 'vitest';
import { bandsOf, narrowed, offsetsAcross, tracksOpenTo } from '../../src/grade/bands.ts';
import { groundsOf, verdictOn } from '../../src/grade/verdict.ts';
import { presetNamed, stretchFrom } from '../../src/terrain/preset.ts';
import { rad } from '../../src/units.ts';
import { ladder } from '../../src/vehicle/aids.ts';
import { classValues } from '../../src/vehicle/classes.ts';
import type { Vehicle, VehicleClass } from '../../src/vehicle/vehicle.ts';

const offsets = [-0.3, -0.2, -0.1, 0, 0.1, 0.2, 0.3];

/** Offsets that go with a set of aids and a margin; null for those that do not. */
const going = (...ease: (number | null)[]) =>
  ease.map((one) => (one === null ? null : { set: 0, ease: one }));

function vehicleOf(vehicleClass: VehicleClass): Vehicle {
  return { id: 'v', name: 'v', driver: '', vehicleClass, values: classValues(vehicleClass), estimated: [] };
}

const ruts = groundsOf(
  stretchFrom(presetNamed('rutted climb')!, { slopeRad: rad(4), lengthM: 6 }, 'taped'),
  'as recorded',
  null,
);

describe('bands', () => {
  it("lose the driver's error at both ends and are best where the margin is greatest", () => {
    const [band, ...more] = narrowed(offsets, going(1, 2, 3, 4, 1, null, 2), 0.1);
    expect(band.fromM).toBeCloseTo(-0.2, 9);
    expect(band.toM).toBeCloseTo(0, 9);
    expect(band.bestM).toBe(0);
    expect(more).toEqual([]);
  });

  it('are best in the middle where margins are alike, and where the fewest aids are needed', () => {
    expect(narrowed(offsets, going(2, 2, 2, 2, 2, 2, 2), 0.1)[0].bestM).toBe(0);
    const aided = offsets.map((_, i) => ({ set: i === 4 ? 0 : 1, ease: 2 }));
    expect(narrowed(offsets, aided, 0.1)[0]).toMatchObject({ bestM: 0.1, set: 0 });
  });

  it('are none where nothing goes, or where it goes in one place only', () => {
    expect(narrowed(offsets, going(null, null, null, null, null, null, null), 0.1)).toEqual([]);
    expect(narrowed(offsets, going(null, null, 1, null, 1, 1, null), 0.1)).toEqual([]);
  });

  it('are nothing on ground that is not known', () => {
    const { values } = vehicleOf('compact 4x4');
    expect(bandsOf(values, { entered: null, worst: [] }, [])).toBeNull();
  });
});

describe('the search over the corridor', () => {
  const aidsOf = (vehicle: Vehicle) => ladder(vehicle.values).map(({ aids }) => aids);

  it('finds what a verdict at every offset finds', () => {
    const found: number[] = [];
    for (const preset of ['rutted climb', 'cross-axle holes', 'rocks', 'ledge'])
      for (const vehicleClass of ['compact 4x4', 'full-size wagon'] as const) {
        const vehicle = vehicleOf(vehicleClass);
        const grounds = groundsOf(
          stretchFrom(presetNamed(preset)!, { slopeRad: rad(4) }, 'taped'),
          'as recorded',
          null,
        );
        const across = offsetsAcross(vehicle.values, grounds.entered!, 0.05);
        const all = Array.from(across, (offsetM) =>
          verdictOn(vehicle, grounds, offsetM).word.startsWith('goes') ? { set: 0, ease: 0 } : null,
        );
        const span = ({ fromM, toM }: { fromM: number; toM: number }) =>
          `${fromM.toFixed(2)} to ${toM.toFixed(2)}`;
        const bands = bandsOf(vehicle.values, grounds, aidsOf(vehicle))!;
        found.push(bands.length);
        expect(bands.map(span), `${preset}, ${vehicleClass}`).toEqual(narrowed(across, all, 0.1).map(span));
      }
    // Nowhere a band on either side would be no search.
    expect(Math.max(...found)).toBeGreaterThan(0);
  }, 120_000);

  it('is open to the own track width, and shut where wheels would leave the corridor', () => {
    const { values } = vehicleOf('compact 4x4');
    const aids = aidsOf(vehicleOf('compact 4x4'));
    const [band] = bandsOf(values, ruts, aids)!;
    const tracks = tracksOpenTo(values, ruts, band.bestM, aids[band.set])!;
    const own = Math.max(values.frontTrackWidthM, values.rearTrackWidthM);
    expect(tracks.fromM).toBeLessThanOrEqual(own);
    expect(tracks.toM).toBeGreaterThanOrEqual(own);
    const roomM = 2 * Math.min(ruts.entered!.corridor.leftM, ruts.entered!.corridor.rightM);
    expect(tracks.toM + values.tyreSectionM).toBeLessThanOrEqual(roomM);
  });

  it('is open to no track width where the vehicle itself does not go', () => {
    const { values } = vehicleOf('full-size wagon');
    expect(tracksOpenTo(values, ruts, 1.5, aidsOf(vehicleOf('full-size wagon'))[0])).toBeNull();
  });
});
