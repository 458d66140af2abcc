import type { Ground } from '../terrain/ground.ts';
import type { Aids } from '../vehicle/aids.ts';
import type { Driveline } from '../vehicle/driveline.ts';
import { drivelineOf } from '../vehicle/driveline.ts';
import type { VehicleValues } from '../vehicle/specs.ts';
import type { Check, CheckName } from './assess.ts';
import { easeOf } from './assess.ts';
import { fitChecks } from './bounds/fit.ts';
import type { Chassis } from './chassis.ts';
import { chassisOf } from './chassis.ts';
import { clearanceChecks, clearanceOf, effortChecks, tipChecks } from './checks.ts';
import type { Gap, UnderPart } from './clearance.ts';
import { gaps, undersideOn } from './clearance.ts';
import type { EffortRoom } from './effort.ts';
import { effortAlong, noEffort } from './effort.ts';
import type { GripRoom } from './grip.ts';
import { gripAlong, noGrip } from './grip.ts';
import { LEANS_M, STATION_M } from './limits.ts';
import { March } from './march.ts';
import type { TraverseRecord } from './record.ts';
import type { Relief } from './relief.ts';
import { softChecks } from './soft.ts';
import { tipMargins } from './stability.ts';
import type { Up } from './up.ts';
import { upOf } from './up.ts';

const FITS: readonly CheckName[] = ['width', 'headroom', 'water depth', 'depth × flow'];
const SOFT: readonly CheckName[] = ['soft ground'];
const TIPS: readonly CheckName[] = ['side tip', 'end tip'];
const EFFORTS: readonly CheckName[] = ['side hold', 'braking', 'traction'];

/** Stations of one piece of a line; braking is a mean over a wheelbase, so that its pieces are never shorter than that. */
const PIECE_STATIONS = 12;

/**
 * Margin, in tolerances, up to which a check on the hardest ground is still in doubt: a deeper rut or another camber may
 * now and then be the easier one.
 */
export const NEAR = 1;

/** A stretch of a line, and what can fail there. */
interface Piece {
  readonly fromM: number;
  /** Least margin of all that is looked at, in its tolerances. */
  readonly margin: number;
  /** Whether all wheels roll level over it, as along a rut. */
  readonly even: boolean;
  readonly names: ReadonlySet<CheckName>;
  readonly parts: readonly UnderPart[];
  /** A gap of nothing under each of them: what is less touches. */
  readonly touching: readonly Gap[];
}

/** One vehicle on one line with one set of aids, asked again and again on grounds that differ a little. */
export class Passage {
  readonly #values: VehicleValues;
  readonly #offsetM: number;
  readonly #driveline: Driveline;
  readonly #names: ReadonlySet<CheckName>;
  readonly #chassis: Chassis;
  readonly #march: March;
  readonly #grip: GripRoom;
  readonly #effort: EffortRoom;
  /** The pieces where a named check can fail, the worst first. */
  readonly #doubtful: readonly Piece[];
  /** Between these it looks at the ground, metres from the pin; about the pin where it looks nowhere. */
  readonly fromM: number;
  readonly toM: number;

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
    this.#driveline = drivelineOf(values, aids);
    this.#names = names;
    this.#chassis = chassisOf(values, aids);
    const stations = names.has('braking') ? Math.ceil(values.wheelbaseM / STATION_M) : PIECE_STATIONS;
    this.#march = new March(this.#chassis, stations + 1, STATION_M);
    this.#grip = noGrip(stations + 1);
    this.#effort = noEffort(stations + 1);
    const reach = (hardest.lengthM + values.wheelbaseM) / 2;
    const pieceM = stations * STATION_M;
    this.#doubtful = Array.from({ length: Math.ceil((2 * reach) / pieceM) }, (_, i) =>
      this.#pieceFrom(-reach + i * pieceM, hardest, relief),
    )
      .filter((piece, i, all) => i === 0 || !alike(piece, all[i - 1]))
      .filter(({ margin }) => !(margin >= NEAR))
      .sort((a, b) => a.margin - b.margin);
    const { frontOverhangM, rearOverhangM, tyreDiameterM } = values;
    const endsM = Math.max(frontOverhangM, rearOverhangM, tyreDiameterM / 2) + LEANS_M;
    const aheadM = values.wheelbaseM / 2 + endsM;
    this.fromM = Math.min(0, ...this.#doubtful.map((piece) => piece.fromM - aheadM));
    this.toM = Math.max(0, ...this.#doubtful.map((piece) => piece.fromM + pieceM + aheadM));
  }

  /** Whether no named check fails on a ground. */
  goesOn(ground: Ground, relief: Relief): boolean {
    return !this.failsBy(0, ground, relief);
  }

  /** Whether a named check fails on a ground, by more than so many of its tolerances. */
  failsBy(tolerances: number, ground: Ground, relief: Relief): boolean {
    const fails = ({ margin, tolerance }: Check) => margin < -tolerances * tolerance;
    const named = (check: Check) => this.#names.has(check.name);
    if (
      wants(this.#names, FITS) &&
      fitChecks(this.#values, ground, this.#offsetM).some((check) => named(check) && fails(check))
    )
      return true;
    if (wants(this.#names, SOFT) && softChecks(this.#values, ground, this.#chassis.tyre).some(fails))
      return true;
    const up = upOf(ground);
    if (up === null) return true;
    return this.#doubtful.some((piece) => {
      const checks = this.#checksOn(piece, ground, relief, up, tolerances === 0 ? piece.touching : undefined);
      return checks === null || checks.some((check) => piece.names.has(check.name) && fails(check));
    });
  }

  #pieceFrom(fromM: number, ground: Ground, relief: Relief): Piece {
    const all = undersideOn(this.#chassis, this.#values).filter(({ part }) =>
      this.#names.has(clearanceOf(part)),
    );
    const piece = { fromM, margin: -Infinity, even: false, names: this.#names, parts: all, touching: [] };
    const up = upOf(ground);
    const checks = up === null ? null : this.#checksOn(piece, ground, relief, up);
    if (checks === null) return piece;
    const named = checks.filter(({ name }) => this.#names.has(name));
    const near = new Set(
      named.filter(({ margin, tolerance }) => margin < NEAR * tolerance).map(({ name }) => name),
    );
    const { bottomM } = this.#march.record;
    const parts = all.filter(({ part }) => near.has(clearanceOf(part)));
    return {
      fromM,
      margin: easeOf(named),
      even: bottomM.every((bottom, i) => bottom === bottomM[i % 4]),
      names: near,
      parts,
      touching: parts.map(({ part }) => ({ part, gapM: 0, stationM: NaN, yM: 0 })),
    };
  }

  /** What is looked at over a piece, of gaps only those that are less than some; null where the vehicle does not stand. */
  #checksOn(piece: Piece, ground: Ground, relief: Relief, up: Up, lessThan?: readonly Gap[]): Check[] | null {
    const chassis = this.#chassis;
    const record = this.#march.take(relief, up, piece.fromM, this.#offsetM, piece.names.has('side hold'));
    if (!stands(record)) return null;
    const checks: Check[] = [];
    if (wants(piece.names, EFFORTS)) {
      const grip = gripAlong(record, chassis, ground, up, this.#grip);
      // What the engine holds on the way down fails nothing: brakes are there.
      const effort = effortAlong(record, chassis, this.#driveline, ground, up, null, grip, this.#effort);
      checks.push(...effortChecks(effort, record, up));
    }
    if (piece.parts.length > 0)
      checks.push(...clearanceChecks(gaps(record, chassis, piece.parts, relief, this.#offsetM, lessThan)));
    if (wants(piece.names, TIPS)) checks.push(...tipChecks(tipMargins(record, chassis, up)));
    return checks;
  }
}

function wants(names: ReadonlySet<CheckName>, group: readonly CheckName[]): boolean {
  return group.some((name) => names.has(name));
}

function stands({ standing }: TraverseRecord): boolean {
  return standing.every((each) => each === 0);
}

/** Even ground goes on: the piece before stands for this one too. */
function alike(piece: Piece, before: Piece): boolean {
  return piece.even && before.even && piece.margin === before.margin;
}
