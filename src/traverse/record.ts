import { Shelf } from './shelf.ts';

/**
 * One vehicle taken along one line: parallel arrays with an entry for each station, or four (front left, front right,
 * rear left, rear right). The place of a station is that of mid-wheelbase.
 */
export interface TraverseRecord {
  readonly length: number;
  readonly stationM: Float64Array;
  /** Index into `STANDINGS`; where it is not 0 the pose and the loads are no answer. */
  readonly standing: Uint8Array;
  readonly loadN: Float64Array;
  readonly hubM: Float64Array;
  readonly travelM: Float64Array;
  /** Ground heights under the wheels, as rigid wheels feel them. */
  readonly bottomM: Float64Array;
  readonly climbTan: Float64Array;
  /** Where across its tread a wheel bears, left of the wheel's middle. */
  readonly bearingM: Float64Array;
  /** How a wheel would sink if it slid `SLIDE_M` to the left: drop over way, tan β; negative where it would rise. */
  readonly fallLeftTan: Float64Array;
  /** The same to the right. */
  readonly fallRightTan: Float64Array;
  /** 1 where the wheels stand as at the station before, so that its answers hold. */
  readonly repeats: Uint8Array;
  readonly heaveM: Float64Array;
  /** Tangents of the body's pitch and roll from the plane; nose down and right side down positive. */
  readonly pitch: Float64Array;
  readonly roll: Float64Array;
}

/** Stations of a record from one on, up to another one that is not among them. */
export interface Stations {
  readonly from: number;
  readonly to: number;
}

export function allOf({ length }: TraverseRecord): Stations {
  return { from: 0, to: length };
}

/** Bytes that a record of one station takes, with what lies between its arrays. */
export const STATION_BYTES = 320;

export function emptyRecord(length: number, shelf = new Shelf(STATION_BYTES * length)): TraverseRecord {
  return {
    length,
    stationM: shelf.numbers(length),
    standing: shelf.bytes(length),
    loadN: shelf.numbers(4 * length),
    hubM: shelf.numbers(4 * length),
    travelM: shelf.numbers(4 * length),
    bottomM: shelf.numbers(4 * length),
    climbTan: shelf.numbers(4 * length),
    bearingM: shelf.numbers(4 * length),
    fallLeftTan: shelf.numbers(4 * length),
    fallRightTan: shelf.numbers(4 * length),
    repeats: shelf.bytes(length),
    heaveM: shelf.numbers(length),
    pitch: shelf.numbers(length),
    roll: shelf.numbers(length),
  };
}

/** The same ground under the wheels, with room for another pose and other loads at each station. */
export function sameGround(of: TraverseRecord, room: TraverseRecord): TraverseRecord {
  return {
    length: of.length,
    stationM: of.stationM,
    standing: room.standing,
    loadN: room.loadN,
    hubM: room.hubM,
    travelM: room.travelM,
    bottomM: of.bottomM,
    climbTan: of.climbTan,
    bearingM: of.bearingM,
    fallLeftTan: of.fallLeftTan,
    fallRightTan: of.fallRightTan,
    repeats: room.repeats,
    heaveM: room.heaveM,
    pitch: room.pitch,
    roll: room.roll,
  };
}
