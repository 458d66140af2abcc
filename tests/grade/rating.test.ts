import { describe, expect, it } from 'vitest';
import { classificationOf } from '../../src/grade/classification.ts';
import { gradeBySizes, gradeObstacle, gradeOf, gradeOfTrack } from '../../src/grade/rating.ts';
import { REFERENCES, referenceVehicle } from '../../src/grade/reference.ts';
import { faultOf } from '../../src/grade/verdict.ts';
import { rad } from '../../src/units.ts';
import { ground, placeOf, plainWay } from './pinned.ts';

const GRAVEL = { material: 'gravel', condition: 'dry' } as const;
const AU = 'australia';

describe('an obstacle', () => {
  it('tells the size that sets its level, with its ±, and the limit that it passes', () => {
    const { reason } = gradeBySizes(placeOf(plainWay(rad(10), GRAVEL)), 'dry', AU);
    expect(reason).toMatchObject({ kind: 'size', measure: 'slope', limit: Math.atan(0.14) });
    expect(reason?.kind === 'size' && reason.value).toBeCloseTo(rad(11), 9);
  });

  it('tells the vehicle that its words are for and that does not go', () => {
    const place = placeOf(ground('ditch', { depthM: 0.3 }));
    const graded = gradeObstacle(place, 'as recorded', 'dry', AU);
    expect(graded.level).toBeGreaterThan(gradeBySizes(place, 'dry', AU).level);
    expect(graded.reason).toMatchObject({ kind: 'vehicle', trial: { gear: 'low' } });
    expect(graded.open).toEqual([]);
  });

  it('by sizes alone stays open for the vehicles', () => {
    expect(gradeBySizes(placeOf(plainWay(0, GRAVEL)), 'dry', AU)).toMatchObject({
      open: ['vehicles'],
      beyond: false,
    });
  });

  it('with unknown slope is not known, at least what the rest makes of it', () => {
    const deep = ground('rutted climb', { leftDepthM: 0.3 });
    const place = placeOf({ ...deep, plane: { slopeRad: null, camberRad: 0 } });
    expect(gradeObstacle(place, 'as recorded', 'dry', AU)).toMatchObject({
      level: 3,
      open: ['slope', 'vehicles'],
      beyond: false,
    });
    const sloped = { ...place, trackSlope: { slopeRad: rad(25), plusMinusRad: rad(2) } };
    expect(gradeBySizes(sloped, 'dry', AU)).toMatchObject({ level: 4, open: ['vehicles'] });
  });

  it('that cannot be is graded by nobody', () => {
    const deep = ground('rutted climb');
    const impossible = { ...deep, features: deep.features.map((rut) => ({ ...rut, toM: -99 })) };
    const { open } = gradeObstacle(placeOf(impossible), 'as recorded', 'dry', AU);
    expect(open).toEqual(['contradiction', 'vehicles']);
  });

  it('that no vehicle of the hardest level passes is beyond the classification', () => {
    const wall = placeOf(ground('ledge', { riseM: 1.2, slopeRad: rad(20) }));
    for (const id of [AU, 'south africa'] as const)
      expect(gradeObstacle(wall, 'as recorded', 'dry', id)).toMatchObject({
        level: classificationOf(id).levels.length,
        beyond: true,
      });
  });

  it('measured as level may climb or fall within its ±: the same shape is no easier from one end', () => {
    const log = placeOf({
      ...ground('log', { diameterM: 0.3 }),
      surface: { material: 'rock', condition: 'dry' },
    });
    const [there, back] = (['as recorded', 'reversed'] as const).map((way) =>
      gradeObstacle(log, way, 'dry', 'south africa'),
    );
    expect([there.level, there.beyond]).toEqual([back.level, back.beyond]);
  });

  it('may be harder in the wet where water and soft ground lie', () => {
    expect(gradeBySizes(placeOf(ground('ford', { depthM: 0.2 })), 'dry', AU).open).toEqual(['vehicles']);
    expect(gradeBySizes(placeOf(ground('ford', { depthM: 0.2 })), 'wet', AU).open).toContain('water');
    const soft = ground('soft ground');
    const moist = {
      ...soft,
      features: soft.features.map((patch) => ({ ...patch, wetness: 'moist' })),
    } as typeof soft;
    expect(gradeBySizes(placeOf(moist), 'wet', AU).open).toContain('soft ground');
  });

  it('entered as wet is never graded drier than that', () => {
    const clay = plainWay(rad(6), { material: 'clay', condition: 'wet' });
    const [dry, wet] = (['dry', 'wet'] as const).map((season) =>
      gradeObstacle(placeOf(clay), 'as recorded', season, AU),
    );
    expect(dry).toEqual(wet);
  });
});

describe('a wet season', () => {
  it('grades by the harder of the ground as entered and rained on: wet sand carries better than dry', () => {
    const [dry, wet] = (['dry', 'wet'] as const).map((condition) =>
      placeOf(plainWay(rad(6), { material: 'sand', condition })),
    );
    expect(gradeObstacle(wet, 'as recorded', 'wet', AU)).toMatchObject({ level: 3, beyond: false });
    for (const season of ['dry', 'wet'] as const)
      expect(gradeObstacle(dry, 'as recorded', season, AU)).toMatchObject({ level: 4, beyond: true });
  });

  it('takes beyond the classification what is of its hardest level in the dry', () => {
    const clay = placeOf(plainWay(rad(22), { material: 'clay', condition: 'dry' }));
    expect(gradeObstacle(clay, 'as recorded', 'dry', AU)).toMatchObject({ level: 4, beyond: false });
    expect(gradeObstacle(clay, 'as recorded', 'wet', AU)).toMatchObject({ level: 4, beyond: true });
  });
});

describe('a track', () => {
  const even = [{ fromM: 0, toM: 500, slopeRad: rad(3), plusMinusRad: rad(1) }];

  it('says what sets it', () => {
    const places = [
      placeOf(plainWay(rad(3), GRAVEL), 'road'),
      placeOf(ground('ledge', { riseM: 0.3 }), 'step'),
    ];
    expect(gradeOf(places, 'as recorded', 'dry', AU, even, true)).toMatchObject({ level: 3, setBy: 'step' });
  });

  it('is set by its own slope where that is harder than every obstacle', () => {
    const steep = [...even, { fromM: 500, toM: 600, slopeRad: rad(-16), plusMinusRad: rad(2) }];
    expect(gradeOfTrack([], steep, AU)).toMatchObject({
      level: 3,
      setBy: null,
      open: [],
      reason: { kind: 'size', measure: 'slope' },
    });
  });

  it('may be harder where its elevations are missing, or too rough to tell', () => {
    expect(gradeOfTrack([], null, AU)).toMatchObject({ level: 1, open: ['track slope'] });
    const gap = [...even, { fromM: 500, toM: 600, slopeRad: NaN, plusMinusRad: NaN }];
    expect(gradeOfTrack([], gap, AU).open).toEqual(['track slope']);
    const rough = [{ fromM: 0, toM: 60, slopeRad: rad(7), plusMinusRad: rad(4) }];
    expect(gradeOfTrack([], rough, AU)).toMatchObject({ level: 1, open: ['rough track slope'] });
  });
});

it('every reference vehicle can be', () => {
  for (const name of REFERENCES) expect(faultOf(referenceVehicle(name))).toBeNull();
});
