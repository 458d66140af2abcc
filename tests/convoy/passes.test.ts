import { describe, expect, it } from 'vitest';
import type { Cell } from '../../src/convoy/matrix.ts';
import { matrixOf, passesUnaided, rowOf } from '../../src/convoy/matrix.ts';
import { orderFor, passesBorne, worn } from '../../src/convoy/passes.ts';
import { recoveryAt, recoveryOn } from '../../src/convoy/recovery.ts';
import type { VerdictWord } from '../../src/grade/verdict.ts';
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

  it('each is judged on soft ground as those ahead leave it, and on firm ground as it was measured', () => {
    const convoy = Array.from({ length: 8 }, (_, i) => vehicle(`v${i}`, 'mid-size wagon'));
    const soft = ({ verdicts: [{ verdict }] }: Cell) =>
      verdict.ladder[0].checks.find(({ name }) => name === 'soft ground')!;
    const [row, firm] = matrixOf([bog, step], convoy, 'as recorded').cells;
    for (let i = 1; i < row.length; i++) expect(soft(row[i]).margin).toBeLessThan(soft(row[i - 1]).margin);
    expect(new Set(firm.map(({ verdicts: [{ verdict }] }) => verdict.limit!.margin)).size).toBe(1);

    const [alone] = rowOf(bog, [convoy[5]], 'as recorded', [5]);
    expect(alone).toEqual(row[5]);
    const later = rowOf({ ...bog, obstacle: worn(bog.obstacle, 5) }, [convoy[5]], 'as recorded');
    expect(soft(alone).margin).toBe(soft(later[0]).margin);
  });

  it('a vehicle that bears so many passes goes at that place of the convoy, and at the next one not', () => {
    const wagon = vehicle('wagon', 'full-size wagon');
    const [borne] = passesBorne([wagon], [bog], 'as recorded', 40);
    expect(borne).toBeGreaterThan(0);
    expect(borne).toBeLessThan(40);
    const at = (ahead: number) => passesUnaided(rowOf(bog, [wagon], 'as recorded', [ahead])[0]);
    expect([at(borne), at(borne + 1)]).toEqual([true, false]);
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

  const line = climb.obstacle.lines[0];
  const rowSaying = (words: Readonly<Record<string, VerdictWord>>): Cell[] =>
    Object.entries(words).map(([vehicleId, word]) => ({
      obstacleId: 'x',
      vehicleId,
      best: 0,
      verdicts: [
        { lineId: 'main', verdict: { ...rowOf(step, [stuck], 'as recorded')[0].verdicts[0].verdict, word } },
      ],
    }));
  const needsPull = {
    ...rowOf(step, [stuck], 'as recorded')[0].verdicts[0].verdict,
    word: 'needs a pull',
  } as const;

  it('only who gets past by themselves can pull forward, and who comes behind must come past first', () => {
    const winch = (id: string) => vehicle(id, 'full-size wagon', { winchN: 45e3, ropeM: 60 });
    const convoy = [winch('before'), stuck, winch('behind'), winch('stuck too')];
    const cells = rowSaying({
      before: 'goes',
      stuck: 'needs a pull',
      behind: 'needs momentum',
      'stuck too': 'needs a pull',
    });
    const { offers } = recoveryOn(climb, line, 'as recorded', stuck, needsPull, convoy, cells)!;
    expect(offers.map(({ vehicleId }) => vehicleId)).toEqual(['before', 'behind']);
    expect(offers.map(({ cautions }) => /comes behind/.test(cautions.join()))).toEqual([false, true]);
    expect(recoveryOn(climb, line, 'as recorded', stuck, needsPull, convoy, [])!.offers).toEqual([]);
  });

  it("the stuck vehicle's own winch is told last, with the anchor that it needs", () => {
    const own = { ...stuck, values: { ...stuck.values, winchN: 45e3, ropeM: 60 } };
    const winch = vehicle('winch', 'full-size wagon', { winchN: 45e3, ropeM: 60 });
    const { offers } = recoveryAt(climb, 'as recorded', own, 0, [winch, own]);
    expect(offers.map(({ vehicleId, means }) => [vehicleId, means])).toEqual([
      ['winch', 'winch'],
      ['stuck', 'own winch'],
    ]);
    expect(offers[1].cautions.join(' ')).toContain('anchor');
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
