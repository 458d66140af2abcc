import type { Reading } from '../problem.ts';
import type { ElevationGrid } from './elevation.ts';
import { say } from '../words/words.ts';

/** Height that stands for none (NASA/USGS, SRTM documentation, SRTM_Topo, section 2.1.3, from memory). */
const VOID = -32768;

/** Nodes a side of a one-degree tile at three and at one arc second. */
const SIDES = [1201, 3601];

/**
 * Reads a one-degree elevation tile of the HGT layout: big-endian 16-bit whole metres, rows from north to south,
 * named for its south-west node as in `S34E088.hgt`. Whole metres are too coarse for a pinch, good enough for
 * the lie of the land.
 */
export function readHgt(fileName: string, bytes: Uint8Array): Reading<ElevationGrid> {
  const place = /([NS])(\d{2})([EW])(\d{3})[^/\\]*\.hgt$/i.exec(fileName);
  const side = SIDES.find((nodes) => nodes * nodes * 2 === bytes.length);
  if (!place) return failed(say.elevation.hgtName(fileName));
  if (side === undefined) return failed(say.elevation.hgtSize);
  const south = Number(place[2]) * (/s/i.test(place[1]) ? -1 : 1);
  const west = Number(place[4]) * (/w/i.test(place[3]) ? -1 : 1);
  const elevationM = new Float32Array(side * side);
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  for (let i = 0; i < elevationM.length; i++) {
    const height = view.getInt16(2 * i, false);
    elevationM[i] = height === VOID ? NaN : height;
  }
  const step = 1 / (side - 1);
  const value = { west, south, lngStepDeg: step, latStepDeg: step, columns: side, rows: side, elevationM };
  return { value, problems: [] };
}

function failed(what: string): Reading<ElevationGrid> {
  const done = say.elevation.notRead;
  return { value: null, problems: [{ severity: 'error', where: say.problem.theFile, what, done, times: 1 }] };
}
