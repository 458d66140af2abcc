import type { Ground } from '../terrain/ground.ts';
import type { Aids } from '../vehicle/aids.ts';
import type { UndersidePoint } from '../vehicle/body.ts';
import { underside } from '../vehicle/body.ts';
import { drivelineOf } from '../vehicle/driveline.ts';
import type { VehicleValues } from '../vehicle/specs.ts';
import type { Check, CheckName } from './assess.ts';
import { fitChecks } from './bounds/fit.ts';
import type { Chassis } from './chassis.ts';
import { chassisOf } from './chassis.ts';
import { clearanceChecks, effortChecks, tipChecks } from './checks.ts';
import { gaps } from './clearance.ts';
import { effortAlong } from './effort.ts';
import { STATION_M } from './limits.ts';
import type { TraverseRecord } from './record.ts';
import type { Relief } from './relief.ts';
import { softChecks } from './soft.ts';
import { tipMargins } from './stability.ts';
import { marchFrom } from './traverse.ts';
import type { Up } from './up.ts';
import { upOf } from './up.ts';

const CLEARANCES: readonly CheckName[] = [
  'approach',
  'rampover',
  'departure',
  'belly',
  'front differential',
  'rear differential',
];
const TIPS: readonly CheckName[] = ['side tip', 'end tip'];
const EFFORTS: readonly CheckName[] = ['side hold', 'traction'];

/** Stations of one piece of a line; braking is a mean over a wheelbase, so that its pieces are never shorter than that. */
const PIECE_STATIONS = 12;

/**
 * Margin, in tolerances, up to which a check on the hardest ground is still in doubt: a deeper rut or another camber may
 * now and then be the easier one.
 */
export const NEAR = 1;

/** One vehicle on one line with one set of aids, asked again and again on grounds that differ a little. */
export class Passage {
  readonly #values: VehicleValues;
  readonly #offsetM: number;
  readonly #aids: Aids;
  readonly #names: ReadonlySet<CheckName>;
  readonly #chassis: Chassis;
  readonly #underside: readonly UndersidePoint[];
  readonly #stations: number;
  /** First stations of the pieces where a named check can fail, the worst first. */
  #doubtful: readonly number[] = [];

  /** Only `names` are looked at, and only where they fail or come near to it on `hardest`. */
  constructor(
    values: VehicleValues,
    offsetM: number,
    aids: Aids,
    names: ReadonlySet<CheckName>,
    hardest: Ground,
    relief: Relief,
  ) {
    this.#values = values;
    this.#offsetM = offsetM;
    this.#aids = aids;
    this.#names = names;
    this.#chassis = chassisOf(values, aids);
    this.#underside = underside(values, this.#chassis.front.hubHeightM, this.#chassis.rear.hubHeightM);
    this.#stations = names.has('braking') ? Math.ceil(values.wheelbaseM / STATION_M) : PIECE_STATIONS;
    const reach = (hardest.lengthM + values.wheelbaseM) / 2;
    const pieceM = this.#stations * STATION_M;
    const pieces = Array.from({ length: Math.ceil((2 * reach) / pieceM) }, (_, i) => -reach + i * pieceM);
    this.#doubtful = pieces
      .map((fromM) => ({
        fromM,
        margin: this.#worstFrom(fromM, hardest, relief),
        even: this.#isEven(fromM, hardest, relief),
      }))
      .filter((piece, i, all) => i === 0 || !alike(piece, all[i - 1]))
      .filter(({ margin }) => !(margin >= NEAR))
      .sort((a, b) => a.margin - b.margin)
      .map(({ fromM }) => fromM);
  }

  /** Whether no named check fails on a ground. */
  goesOn(ground: Ground, relief: Relief): boolean {
    const whole = [
      ...fitChecks(this.#values, ground, this.#offsetM),
      ...softChecks(this.#values, ground, this.#chassis.tyre),
    ];
    if (this.#least(whole) < 0) return false;
    return this.#doubtful.every((fromM) => this.#worstFrom(fromM, ground, relief) >= 0);
  }

  #least(checks: readonly Check[]): number {
    let least = Infinity;
    for (const { name, margin, tolerance } of checks)
      if (this.#names.has(name)) least = Math.min(least, margin / tolerance);
    return least;
  }

  /** Whether all wheels roll level over a piece, as along a rut. */
  #isEven(fromM: number, ground: Ground, relief: Relief): boolean {
    const up = upOf(ground);
    if (up === null) return false;
    const { bottomM } = this.#march(fromM, relief, up);
    return bottomM.every((bottom, i) => bottom === bottomM[i % 4]);
  }

  #march(fromM: number, relief: Relief, up: Up): TraverseRecord {
    const slides = this.#names.has('side hold');
    const count = this.#stations + 1;
    return marchFrom(this.#chassis, relief, up, fromM, count, this.#offsetM, STATION_M, slides);
  }

  /** Least margin of the named checks over a piece, in their tolerances; −Infinity where the vehicle does not stand. */
  #worstFrom(fromM: number, ground: Ground, relief: Relief): number {
    const wants = (group: readonly CheckName[]) => group.some((name) => this.#names.has(name));
    const up = upOf(ground);
    if (up === null) return -Infinity;
    const chassis = this.#chassis;
    const record = this.#march(fromM, relief, up);
    if (record.standing.some((standing) => standing !== 0)) return -Infinity;
    const checks: Check[] = [];
    if (wants(EFFORTS) || this.#names.has('braking')) {
      const effort = effortAlong(record, chassis, drivelineOf(this.#values, this.#aids), ground, up);
      checks.push(...effortChecks(effort, record, up));
    }
    if (wants(CLEARANCES)) {
      checks.push(...clearanceChecks(gaps(record, chassis, this.#underside, relief, this.#offsetM)));
    }
    if (wants(TIPS)) checks.push(...tipChecks(tipMargins(record, chassis, up)));
    return this.#least(checks);
  }
}

interface Piece {
  readonly margin: number;
  readonly even: boolean;
}

/** Even ground goes on: the piece before stands for this one too. */
function alike(piece: Piece, before: Piece): boolean {
  return piece.even && before.even && piece.margin === before.margin;
}
