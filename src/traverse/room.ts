import type { EffortRoom } from './effort.ts';
import { noEffort } from './effort.ts';
import type { GripRoom } from './grip.ts';
import { noGrip } from './grip.ts';
import type { TraverseRecord } from './record.ts';
import { emptyRecord } from './record.ts';

/** What a chassis is marched in, and its efforts are reckoned in, one set of aids after the other. */
export interface Room {
  readonly record: TraverseRecord;
  readonly grip: GripRoom;
  readonly effort: EffortRoom;
}

/** Rooms to be used anew, by stations: to make one takes as long as to fill it. */
const spare = new Map<number, Room[]>();

/** Numbers of stations for which rooms are kept. */
const MOST_SPARE = 16;

/** A room for so many stations; what stands in it is of no meaning. */
export function takeRoom(stations: number): Room {
  const found = spare.get(stations)?.pop();
  return found ?? { record: emptyRecord(stations), grip: noGrip(stations), effort: noEffort(stations) };
}

/** Nobody looks into a room any more. */
export function leaveRoom(room: Room): void {
  const { length } = room.record;
  const rooms = spare.get(length) ?? [];
  if (rooms.length === 0 && spare.size >= MOST_SPARE) spare.clear();
  rooms.push(room);
  spare.set(length, rooms);
}
