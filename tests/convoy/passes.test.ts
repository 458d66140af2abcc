import { describe, expect, it } from 'vitest';
import { orderFor, passesBorne, worn } from '../../src/convoy/passes.ts';
import { recoveryAt } from '../../src/convoy/recovery.ts';
import type { Obstacle } from '../../src/terrain/obstacle.ts';
import { presetNamed, stretchFrom } from '../../src/terrain/preset.ts';
import type { Rut } from '../../src/terrain/rut.ts';
import { rad } from '../../src/units.ts';
import { classValues } from '../../src/vehicle/classes.ts';
import type { VehicleValues } from '../../src/vehicle/specs.ts';
import type { Vehicle, VehicleClass } from '../../src/vehicle/vehicle.ts';

function pinned(preset: string, answers: Record<string, number>, change = {}): Obstacle {
  const stretch = { ...stretchFrom(presetNamed(preset)!, answers), ...change };
  const lines = [{ id: 'main', kind: 'main', name: 'main', offsetM: 0 }] as const;
  return {
    id: preset,
    name: preset,
    preset,
    lng: 0,
    lat: 0,
    stationM: 0,
    stretch,
    lines,
    note: '',
    photos: [],
  };
}

function vehicle(id: string, vehicleClass: VehicleClass, own: Partial<VehicleValues> = {}): Vehicle {
  const values = { ...classValues(vehicleClass), ...own };
  return { id, name: id, driver: '', vehicleClass, values, estimated: [] };
}

const bog = { obstacle: pinned('soft ground', { slopeRad: 0, coneIndexPa: 360e3 }), trackSlope: null };
const step = { obstacle: pinned('ledge', { slopeRad: 0, riseM: 0.05 }), trackSlope: null };

describe('ground left worse', () => {
  it('ruts in mud deepen by the square root of the passes, on rock not at all', () => {
    const mud = pinned(
      'rutted climb',
      { slopeRad: 0.1, leftDepthM: 0.2 },
      {
        surface: { material: 'mud', condition: 'wet' },
      },
    );
    expect((worn(mud, 3).stretch.features[0] as Rut).depthM).toBeCloseTo(0.4, 12);
    const rock = {
      ...mud,
      stretch: { ...mud.stretch, surface: { material: 'rock', condition: 'dry' } as const },
    };
    expect(worn(rock, 3).stretch).toBe(rock.stretch);
  });

  it('a heavier vehicle bears fewer passes of a bog; nobody minds a rock step', () => {
    const light = vehicle('light', 'compact 4x4', { engineTorqueNm: 400 });
    const heavy = vehicle('heavy', 'full-size wagon');
    expect(passesBorne([light], [step], 'as recorded', 11)).toEqual([Infinity]);
    const borne = passesBorne([light, heavy], [bog], 'as recorded', 40);
    expect(borne[0]).toBeGreaterThan(borne[1]);
  });

  it('the order keeps a puller at the end', () => {
    const convoy = [
      vehicle('winch', 'full-size wagon', { winchN: 45e3, ropeM: 30 }),
      vehicle('wagon', 'mid-size wagon'),
      vehicle('strap', 'dual-cab utility', { straps: true }),
    ];
    const { vehicleIds, unaided } = orderFor([step], convoy, 'as recorded');
    expect(['winch', 'strap']).toContain(vehicleIds[2]);
    expect(unaided).toBe(3);
  });
});

describe('help for who is stuck', () => {
  const climb = { obstacle: pinned('rutted climb', { slopeRad: rad(14) }), trackSlope: null };
  const stuck = vehicle('stuck', 'mid-size wagon', { frontPointN: 60e3 });

  it('a winch with enough tackle can give it, an empty boot cannot', () => {
    const winch = vehicle('winch', 'full-size wagon', { winchN: 45e3, ropeM: 60 });
    const { pullN, offers } = recoveryAt(climb, 'as recorded', stuck, 0, [
      winch,
      vehicle('bare', 'dual-cab utility'),
      stuck,
    ]);
    expect(offers.map((offer) => [offer.vehicleId, offer.means])).toEqual([['winch', 'winch']]);
    expect(pullN).toBeGreaterThan(0.25 * 2350 * 9.8);
  });

  it('says when nobody can, and when there is no rated point', () => {
    const { offers, cautions } = recoveryAt(
      climb,
      'as recorded',
      { ...stuck, values: { ...stuck.values, frontPointN: 0 } },
      0,
      [],
    );
    expect(offers).toEqual([]);
    expect(cautions).toHaveLength(2);
  });
});
