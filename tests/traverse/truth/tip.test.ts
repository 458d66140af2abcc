import { describe, expect, it } from 'vitest';
import { effortAlong } from '../../../src/traverse/effort.ts';
import { Equilibrium } from '../../../src/traverse/equilibrium.ts';
import { emptyRecord } from '../../../src/traverse/record.ts';
import { leanedTan } from '../../../src/traverse/stability.ts';
import { degrees, rad } from '../../../src/units.ts';
import { cambered, climbing, DRIVES, largest, pushOnSlope, rigidChassis } from '../rigid.ts';
import { flatGround } from '../scenes.ts';

const LEVEL = { x: 0, y: 0, z: 1 };
const FLAT = [0, 0, 0, 0];

describe('side tip from the static stability factor, atan(t / 2h): NHTSA HS-809 868 class averages (tolerance 0.1°)', () => {
  it.each([
    ['cars', 1.41, 54.7],
    ['sport utility', 1.17, 49.5],
    ['pickups', 1.18, 49.7],
    ['minivans', 1.24, 51.1],
    ['full-size vans', 1.12, 48.2],
  ])('%s: factor %d tips at %d°', (_, factor, deg) => {
    const heightM = 0.7;
    const book = {
      massKg: 2000,
      wheelbaseM: 2.8,
      behindFrontM: 1.3,
      heightM,
      trackWidthM: 2 * heightM * factor,
    };
    const chassis = rigidChassis(book);
    for (const edge of [0, 1])
      expect(Math.abs(degrees(Math.atan(leanedTan(chassis, LEVEL, FLAT, FLAT, edge, 4))) - deg)).toBeLessThan(
        0.1,
      );
    const stands = largest(1.2, (camber) => new Equilibrium(chassis, cambered(camber)).solve(FLAT) === 0);
    expect(Math.abs(degrees(stands) - deg)).toBeLessThan(0.1);
  });
});

describe('end tip and slide: what-when-how "Automobile" Ex. 31.6 (inputs printed, answers worked out)', () => {
  const book = { massKg: 5000, wheelbaseM: 2.25, behindFrontM: 1.25, heightM: 1.5 };
  it('overturns backward at 33.69° (tolerance 0.02°)', () => {
    const stands = largest(
      1.2,
      (slope) => new Equilibrium(rigidChassis(book), climbing(slope)).solve(FLAT) === 0,
    );
    expect(Math.abs(degrees(stands) - 33.69)).toBeLessThan(0.02);
  });

  it('slides at 19.29° with all wheels held and μ 0.35 (tolerance 0.02°)', () => {
    const holds = largest(1, (slope) => pushOnSlope(book, DRIVES.four, 0.35, slope) >= Math.sin(slope));
    expect(Math.abs(degrees(holds) - 19.29)).toBeLessThan(0.02);
  });
});

it('stands across a 15° slope from μ = tan 15° = 0.268 on (physicsforums 1064677, printed; tolerance 0.001)', () => {
  const book = { massKg: 2000, wheelbaseM: 2.8, behindFrontM: 1.4, heightM: 0.6, trackWidthM: 1.6 };
  const chassis = rigidChassis(book);
  const up = cambered(rad(15));
  const record = emptyRecord(1);
  const body = new Equilibrium(chassis, up);
  body.solve(FLAT);
  record.loadN.set(body.loadN);
  const holds = (mu: number) => {
    // Standing still: nothing is asked along the line.
    const ground = {
      ...flatGround,
      camberRad: rad(15),
      peakAdhesion: mu,
      slidingAdhesion: mu,
      rollingResistance: 0,
    };
    return effortAlong(record, chassis, DRIVES.four, ground, up).hold[0] >= 0;
  };
  const slides = largest(1, (mu) => !holds(mu));
  expect(Math.abs(slides - 0.268)).toBeLessThan(0.001);
});

describe('four wheels on warped ground (derived; no published example found)', () => {
  // One wheel raised by w: heave, pitch, roll and warp take w/4 each, only warp deflects springs of rate k: ΔV = k w / 4.
  const k = 30e3;
  const book = { massKg: 1600, wheelbaseM: 2.6, behindFrontM: 1.3, heightM: 0.001, trackWidthM: 1.5 };
  const rigid = rigidChassis(book);
  const soft = {
    ...rigid,
    front: { ...rigid.front, springNPerM: k },
    rear: { ...rigid.rear, springNPerM: k },
  };
  const staticN = (1600 * 9.80665) / 4;

  it('gains k w / 4 on the raised wheel and its diagonal, and loses it on the others (tolerance 1 N)', () => {
    const body = new Equilibrium(soft, LEVEL);
    body.solve([0.1, 0, 0, 0]);
    const gained = [1, -1, -1, 1].map((sign) => staticN + (sign * k * 0.1) / 4);
    for (let i = 0; i < 4; i++) expect(Math.abs(body.loadN[i] - gained[i])).toBeLessThan(1);
  });

  it('lifts two wheels at w = 4 V / k (tolerance 1 mm)', () => {
    const stays = largest(1, (w) => {
      const body = new Equilibrium(soft, LEVEL);
      body.solve([w, 0, 0, 0]);
      return Math.min(...body.loadN) > 0.5;
    });
    expect(Math.abs(stays - (4 * staticN) / k)).toBeLessThan(0.001);
  });
});
