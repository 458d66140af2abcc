import type { EffortRoom } from './effort.ts';
import { noEffort } from './effort.ts';
import type { GripRoom } from './grip.ts';
import { noGrip } from './grip.ts';
import type { TraverseRecord } from './record.ts';
import { emptyRecord } from './record.ts';
import { Shelf } from './shelf.ts';

/** What a chassis is marched in, and its efforts are reckoned in, one set of aids after the other. */
export interface Room {
  readonly record: TraverseRecord;
  readonly grip: GripRoom;
  readonly effort: EffortRoom;
}

/** Rooms to be used anew, by stations: to make one takes as long as to fill it. */
const spare = new Map<number, Room[]>();

/** Numbers of stations for which rooms are kept: those of a whole convoy at one obstacle and at the next. */
const MOST_SPARE = 32;

/** A room for so many stations; what stands in it is of no meaning. */
export function takeRoom(stations: number): Room {
  const found = spare.get(stations)?.pop();
  if (found) return found;
  const shelf = new Shelf();
  return {
    record: emptyRecord(stations),
    grip: noGrip(stations, shelf),
    effort: noEffort(stations, shelf),
  };
}

/** Nobody looks into a room any more. */
export function leaveRoom(room: Room): void {
  const { length } = room.record;
  const rooms = spare.get(length) ?? [];
  rooms.push(room);
  // What was left last stands last, and what nobody has asked for the longest goes first.
  spare.delete(length);
  spare.set(length, rooms);
  if (spare.size > MOST_SPARE) spare.delete([...spare.keys()][0]);
}
