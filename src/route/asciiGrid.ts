import { gunzipSync } from 'fflate';
import type { Problem, Reading } from '../problem.ts';
import type { ElevationGrid } from './elevation.ts';
import { say } from '../words/words.ts';

/** Most nodes that are read: a one-degree tile at one arc second has 13 million. */
const MAX_NODES = 16_000_000;

/** Bytes of header that are searched; six short lines need under 200. */
const HEADER_BYTES = 2_000;

/** Most bytes after unpacking: `MAX_NODES` of eight characters. */
const MAX_BYTES = 8 * MAX_NODES;

/**
 * Reads a grid of heights in metres in the ASCII grid layout (GDAL driver AAIGrid: `ncols`, `nrows`, `xllcorner`
 * or `xllcenter`, `yllcorner` or `yllcenter`, `cellsize` or `dx` and `dy`, `NODATA_value`, then rows from north
 * to south), positions in degrees of WGS 84, packed by gzip or not.
 */
export function readAsciiGrid(bytes: Uint8Array): Reading<ElevationGrid> {
  const text = unpacked(bytes);
  if (typeof text === 'string') return failed(say.problem.theFile, text);
  const { header, end } = headerOf(text);
  const need = (...names: string[]) =>
    names.map((name) => header.get(name)).find((v) => v !== undefined) ?? NaN;

  const columns = need('ncols');
  const rows = need('nrows');
  const lngStepDeg = need('cellsize', 'dx');
  const latStepDeg = need('cellsize', 'dy');
  const west = header.get('xllcenter') ?? need('xllcorner') + lngStepDeg / 2;
  const south = header.get('yllcenter') ?? need('yllcorner') + latStepDeg / 2;
  if (!Number.isInteger(columns) || !Number.isInteger(rows) || columns < 2 || rows < 2)
    return failed(say.problem.header, say.elevation.needsRows);
  if (columns * rows > MAX_NODES) return failed(say.problem.header, say.elevation.tooMany(MAX_NODES));
  if (!(lngStepDeg > 0 && latStepDeg > 0)) return failed(say.problem.header, say.elevation.needsCell);
  const north = south + (rows - 1) * latStepDeg;
  const east = west + (columns - 1) * lngStepDeg;
  if (!(west >= -180 && east <= 180 && south >= -90 && north <= 90))
    return failed(say.problem.header, say.elevation.notWgs84);

  const elevationM = new Float32Array(columns * rows).fill(NaN);
  const read = numbersInto(elevationM, text, end, need('nodata_value'));
  const problems: Problem[] = [];
  if (read < elevationM.length)
    problems.push({
      severity: 'error',
      where: say.problem.heightOf(read + 1, elevationM.length),
      what: say.elevation.endsHere,
      done: say.elevation.restUnknown,
      times: 1,
    });
  return { value: { west, south, lngStepDeg, latStepDeg, columns, rows, elevationM }, problems };
}

function failed(where: string, what: string): Reading<ElevationGrid> {
  const done = say.elevation.notRead;
  return { value: null, problems: [{ severity: 'error', where, what, done, times: 1 }] };
}

/** The bytes of the text, or what is wrong as a sentence. Servers may already have unpacked the file. */
function unpacked(bytes: Uint8Array): Uint8Array | string {
  if (bytes[0] !== 0x1f || bytes[1] !== 0x8b) return bytes;
  const size =
    bytes.length >= 18 ? new DataView(bytes.buffer, bytes.byteOffset).getUint32(bytes.length - 4, true) : 0;
  if (size > MAX_BYTES) return say.elevation.unpackedTooLarge;
  try {
    return gunzipSync(bytes, { out: new Uint8Array(size) });
  } catch {
    return say.elevation.badGzip;
  }
}

/** Names in lower case, and where the heights begin. */
function headerOf(text: Uint8Array): { header: Map<string, number>; end: number } {
  const header = new Map<string, number>();
  const start = String.fromCharCode(...text.subarray(0, HEADER_BYTES));
  const line = /\s*([a-z_]+)\s+(\S+)[^\S\n]*/iy;
  let end = 0;
  for (let match = line.exec(start); match; match = line.exec(start)) {
    header.set(match[1].toLowerCase(), Number(match[2]));
    end = line.lastIndex;
  }
  return { header, end };
}

/** Fills `into` with decimal numbers and returns how many there were before the text ended or broke. */
function numbersInto(into: Float32Array, text: Uint8Array, from: number, noData: number): number {
  let at = from;
  for (let count = 0; count < into.length; count++) {
    while (at < text.length && text[at] <= SPACE) at++;
    const start = at;
    while (at < text.length && text[at] > SPACE) at++;
    const value = at > start ? Number(String.fromCharCode(...text.subarray(start, at))) : NaN;
    if (Number.isNaN(value)) return count;
    into[count] = value === noData ? NaN : value;
  }
  return into.length;
}

const SPACE = 32;
