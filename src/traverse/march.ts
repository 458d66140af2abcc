import type { Chassis } from './chassis.ts';
import type { Equilibrium, Standing } from './equilibrium.ts';
import { solverOf } from './equilibrium.ts';
import { SLIDE_M, STATION_M } from './limits.ts';
import type { TraverseRecord } from './record.ts';
import { emptyRecord, sameGround } from './record.ts';
import type { Relief } from './relief.ts';
import { Shelf } from './shelf.ts';
import type { Up } from './up.ts';
import type { WheelPath } from './wheel.ts';
import { emptyPath, wheelPath } from './wheel.ts';

/** One chassis taken over `count` stations, again and again: its record and its solver are used anew each time. */
export class March {
  readonly record: TraverseRecord;
  readonly #chassis: Chassis;
  readonly #stationM: number;
  readonly #body: Equilibrium;
  /** Made when a relief keeps no paths of its own. */
  #paths: ReturnType<typeof emptyPaths> | null = null;

  constructor(chassis: Chassis, count: number, stationM: number, record = emptyRecord(count)) {
    this.record = record;
    this.#chassis = chassis;
    this.#stationM = stationM;
    this.#body = solverOf(chassis);
  }

  /**
   * From the station at `fromM` on, `offsetM` left of the main line. The record stays that of this call until the next.
   * Without `slides` nothing is told of sliding sideways.
   */
  take(relief: Relief, up: Up, fromM: number, offsetM: number, slides = true): TraverseRecord {
    const { record } = this;
    for (let n = 0; n < record.length; n++) record.stationM[n] = fromM + n * this.#stationM;
    for (let i = 0; i < 4; i++) this.#roll(i, relief, fromM, offsetM, slides);
    this.stand(up, record);
    return record;
  }

  #roll(i: number, relief: Relief, fromM: number, offsetM: number, slides: boolean): void {
    const { record } = this;
    const { length } = record;
    const { tyre, wheelbaseM, front, rear } = this.#chassis;
    const x = fromM + (i < 2 ? wheelbaseM : -wheelbaseM) / 2;
    const y = offsetM + ((i % 2 === 0 ? 1 : -1) * (i < 2 ? front : rear).trackWidthM) / 2;
    if (relief.paths === null) this.#paths ??= emptyPaths(length);
    const paths = this.#paths;
    const { bottomM, climbTan, bearingLines } = wheelPath(
      relief,
      x,
      this.#stationM,
      length,
      y,
      tyre,
      paths?.wheel,
    );
    let left = bottomM;
    let right = bottomM;
    if (slides) {
      left = wheelPath(relief, x, this.#stationM, length, y + SLIDE_M, tyre, paths?.left).bottomM;
      right = wheelPath(relief, x, this.#stationM, length, y - SLIDE_M, tyre, paths?.right).bottomM;
    }
    for (let n = 0; n < length; n++) {
      record.bottomM[4 * n + i] = bottomM[n];
      record.climbTan[4 * n + i] = climbTan[n];
      record.bearingM[4 * n + i] = bearingLines[n] * relief.acrossM;
      record.fallLeftTan[4 * n + i] = (bottomM[n] - left[n]) / SLIDE_M;
      record.fallRightTan[4 * n + i] = (bottomM[n] - right[n]) / SLIDE_M;
    }
  }

  /** Finds pose and loads at every station of a record, on the ground that stands in it. */
  stand(up: Up, record: TraverseRecord): void {
    const body = this.#body;
    body.lean(up);
    body.forget();
    for (let n = 0; n < record.length; n++) {
      const here = 4 * n;
      const repeats = repeatsAt(record, n);
      record.repeats[n] = repeats ? 1 : 0;
      record.standing[n] = repeats ? record.standing[n - 1] : this.#settle(record, here);
      for (let i = 0; i < 4; i++) {
        record.loadN[here + i] = body.loadN[i];
        record.hubM[here + i] = body.hubM[i];
        record.travelM[here + i] = body.travelM[i];
      }
      record.heaveM[n] = body.heaveM;
      record.pitch[n] = body.pitch;
      record.roll[n] = body.roll;
    }
  }

  /** A pose that the last station's leads nowhere from may yet be found from the plane through the ground. */
  #settle({ bottomM, climbTan }: TraverseRecord, here: number): Standing {
    const standing = this.#body.solve(bottomM, climbTan, here);
    return standing === 0 ? 0 : this.#body.solve(bottomM, climbTan, here);
  }
}

function emptyPaths(length: number): Readonly<Record<'wheel' | 'left' | 'right', WheelPath>> {
  const shelf = new Shelf(9 * 8 * length);
  const path = () => emptyPath(length, shelf);
  return { wheel: path(), left: path(), right: path() };
}

function repeatsAt(record: TraverseRecord, n: number): boolean {
  if (n === 0 || record.standing[n - 1] !== 0) return false;
  const { bottomM, climbTan, fallLeftTan, fallRightTan, bearingM } = record;
  for (let i = 4 * n; i < 4 * n + 4; i++)
    if (
      bottomM[i] !== bottomM[i - 4] ||
      climbTan[i] !== climbTan[i - 4] ||
      fallLeftTan[i] !== fallLeftTan[i - 4] ||
      fallRightTan[i] !== fallRightTan[i - 4] ||
      bearingM[i] !== bearingM[i - 4]
    )
      return false;
  return true;
}

/** Stations of a line that a chassis is taken along, from its front wheels at the start to its rear at the end. */
export function stationsAlong(lengthM: number, { wheelbaseM }: Chassis, stationM = STATION_M): number {
  return Math.ceil((lengthM + wheelbaseM) / stationM) + 1;
}

/** Takes a chassis along the whole of a line `offsetM` left of the main one. */
export function march(
  chassis: Chassis,
  relief: Relief,
  up: Up,
  lengthM: number,
  offsetM: number,
  stationM = STATION_M,
  room = emptyRecord(stationsAlong(lengthM, chassis, stationM)),
): TraverseRecord {
  return marchInPlanes(chassis, relief, [up], lengthM, offsetM, stationM, [room])[0];
}

/** The same in each plane that the ground may lie in: a record each in its room, all on the same ground. */
export function marchInPlanes(
  chassis: Chassis,
  relief: Relief,
  ups: readonly Up[],
  lengthM: number,
  offsetM: number,
  stationM: number,
  rooms: readonly TraverseRecord[],
): TraverseRecord[] {
  const fromM = -(lengthM + chassis.wheelbaseM) / 2;
  const [room] = rooms;
  const along = new March(chassis, room.length, stationM, room);
  const first = along.take(relief, ups[0], fromM, offsetM);
  const others = rooms.slice(1).map((other, k) => {
    const record = sameGround(first, other);
    along.stand(ups[k + 1], record);
    return record;
  });
  return [first, ...others];
}
