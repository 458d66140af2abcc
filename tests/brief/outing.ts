import { readFileSync } from 'node:fs';
import { readTrip } from '../../src/archive/share.ts';
import type { Outing } from '../../src/brief/brief.ts';
import type { Matrix } from '../../src/convoy/matrix.ts';
import type { Order } from '../../src/convoy/order.ts';
import { placesOn } from '../../src/convoy/places.ts';
import type { RungVerdict, Verdict, VerdictWord } from '../../src/grade/verdict.ts';
import type { Direction } from '../../src/terrain/obstacle.ts';
import { ladder } from '../../src/vehicle/aids.ts';
import { classValues } from '../../src/vehicle/classes.ts';
import type { Vehicle } from '../../src/vehicle/vehicle.ts';

const trip = readTrip(readFileSync(new URL('../archive/in/version-1.json', import.meta.url), 'utf8')).value!;

function vehicle(name: string, winchN: number): Vehicle {
  const values = { ...classValues('mid-size wagon'), winchN, ropeM: 30, rearDifferential: 'locker' as const };
  return {
    id: name,
    name,
    driver: `Driver of ${name}`,
    vehicleClass: 'mid-size wagon',
    values,
    estimated: [],
  };
}

/** An outing whose verdicts are set by hand, so that a briefing of it depends on nothing else. */
export function outing(direction: Direction = 'as recorded', name = 'Invented outing'): Outing {
  const [first] = trip.obstacles;
  return {
    name,
    note: 'Meet at the gate.',
    radioChannel: 'UHF 18',
    direction,
    track: trip.track,
    obstacles: [first, { ...first, id: 'o2', name: 'Second', stationM: 200, note: '' }],
    vehicles: [vehicle('Kestrel', 40_000), vehicle('Wren', 0), vehicle('Teal', 0)],
  };
}

/** What is said at each obstacle in order of travel, of each vehicle in turn, and on which line. */
const SAID: readonly (readonly (readonly [VerdictWord, number, string])[])[] = [
  [
    ['goes', 0, 'main'],
    ['needs a pull', 0, 'main'],
    ['goes', 1, 'l'],
  ],
  [
    ['does not go', 0, 'main'],
    ['needs momentum', 0, 'main'],
    ['not known', 0, 'b'],
  ],
];

export function matrix({ obstacles, vehicles, direction }: Outing): Matrix {
  const met = direction === 'reversed' ? obstacles.toReversed() : obstacles;
  return {
    cells: met.map((obstacle, i) =>
      vehicles.map((one, v) => {
        const [word, rung, lineId] = SAID[i][v];
        return {
          obstacleId: obstacle.id,
          vehicleId: one.id,
          verdicts: [{ lineId, verdict: verdict(one, word, rung) }],
          best: 0,
        };
      }),
    ),
  };
}

function verdict({ values }: Vehicle, word: VerdictWord, at: number): Verdict {
  const rungs = ladder(values).map((rung): RungVerdict => ({
    rung,
    word,
    cause: 'ledge <against> the "tyre"',
    limit: null,
    checks: [],
    worstChecks: [],
    entrySpeedMps: word === 'needs momentum' ? 2 : 0,
    pullN: word === 'needs a pull' ? 3000 : 0,
  }));
  return { ...rungs[at], ladder: rungs };
}

export function places({ track, obstacles }: Outing) {
  return placesOn(track, obstacles);
}

/** Last first, so that it is not the order as entered. */
export function order({ vehicles }: Outing): Order {
  const vehicleIds = vehicles.map(({ id }) => id).toReversed();
  return { vehicleIds, reasons: vehicleIds.map((id) => `reason of ${id}`), unaided: 1 };
}
