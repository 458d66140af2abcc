import { describe, expect, it } from 'vitest';
import type { Attempt } from '../../src/grade/neededAdhesion.ts';
import { neededAdhesion } from '../../src/grade/neededAdhesion.ts';
import type { Obstacle } from '../../src/terrain/obstacle.ts';
import { presetNamed, stretchFrom } from '../../src/terrain/preset.ts';
import type { Surface } from '../../src/terrain/surface.ts';
import { ladder } from '../../src/vehicle/aids.ts';
import { classValues } from '../../src/vehicle/classes.ts';
import type { Vehicle } from '../../src/vehicle/vehicle.ts';

const vehicle: Vehicle = {
  id: 'v',
  name: 'utility',
  driver: '',
  vehicleClass: 'dual-cab utility',
  values: classValues('dual-cab utility'),
  estimated: [],
};
const rungs = ladder(vehicle.values).map(({ name }) => name);

function climb(slopeRad: number | null, surface: Surface): Obstacle {
  const stretch = stretchFrom(presetNamed('side slope')!, { camberRad: 0, lengthM: 12 });
  return {
    id: 'o',
    name: '',
    preset: 'side slope',
    lng: 0,
    lat: 0,
    stationM: 0,
    stretch: { ...stretch, plane: { slopeRad, camberRad: 0 }, surface },
    lines: [{ id: 'm', kind: 'main', name: 'main', offsetM: 0 }],
    note: '',
    photos: [],
  };
}

const WET: Surface = { material: 'clay', condition: 'wet' };

function attempt(more: Partial<Attempt> = {}): Attempt {
  return {
    vehicle,
    obstacle: climb(0.2, WET),
    lineId: 'm',
    direction: 'as recorded',
    rung: rungs[1],
    trackSlope: null,
    ...more,
  };
}

describe('the adhesion that an attempt needed', () => {
  it('rises with the slope and falls with the aids', () => {
    const at = (slopeRad: number) => neededAdhesion(attempt({ obstacle: climb(slopeRad, WET) })) ?? NaN;
    expect(at(0.25)).toBeGreaterThan(at(0.2));
    const bare = neededAdhesion(attempt({ rung: rungs[0] })) ?? NaN;
    expect(bare).toBeGreaterThan(neededAdhesion(attempt({ rung: rungs[1] })) ?? NaN);
  });

  it('is no matter of what the tables print of that ground', () => {
    const snow: Surface = { material: 'mud', condition: 'dry' };
    const grass: Surface = { material: 'snow', condition: 'wet' };
    const [a, b] = [snow, grass].map((surface) => neededAdhesion(attempt({ obstacle: climb(0.2, surface) })));
    expect(a).not.toBeNull();
    expect(b).not.toBeNull();
  });

  it('is not told where something else limits, or is not known', () => {
    expect(neededAdhesion(attempt({ obstacle: climb(null, WET) }))).toBeNull();
    expect(neededAdhesion(attempt({ lineId: 'gone' }))).toBeNull();
    expect(neededAdhesion(attempt({ rung: 'wings' }))).toBeNull();
    const narrow = climb(0.02, { material: 'asphalt', condition: 'dry' });
    const stretch = { ...narrow.stretch, corridor: { ...narrow.stretch.corridor, leftM: 0.4, rightM: 0.4 } };
    expect(neededAdhesion(attempt({ obstacle: { ...narrow, stretch } }))).toBeNull();
  });
});
