import type { ForeignPath } from '../filed.ts';

/** A geometry that we know what to do with. `other` is one that holds no line and no point of its own. */
export interface Geometry {
  readonly kind: 'point' | 'lines' | 'other';
  /** A piece a line; a point is a piece of one. */
  readonly paths: readonly ForeignPath[];
}

/** ISO WKB (ISO 13249-3): a type, and 1000 more with Z, 2000 with M, 3000 with both. */
const POINT = 1;
const LINE = 2;
const MULTI_LINE = 5;
const WITH_Z = 1000;

/** Bytes of a header without envelope, and of the envelopes by their code (OGC 12-128r18, 2.1.3.1.1). */
const HEADER = 8;
const ENVELOPES = [0, 32, 48, 48, 64];

/** A point, or null where there is none. GeoPackageBinary, little-endian (OGC 12-128r18, 2.1.3). */
export function pointBlob(lng: number, lat: number, srsId: number): Uint8Array {
  const view = new DataView(new ArrayBuffer(HEADER + 21));
  header(view, srsId, 0);
  wkb(view, HEADER, POINT);
  view.setFloat64(HEADER + 5, lng, true);
  view.setFloat64(HEADER + 13, lat, true);
  return new Uint8Array(view.buffer);
}

/**
 * Lines of two points or more each, with an envelope. Heights go along only where all are known: a third number that is
 * none (NaN) makes GDAL lose the whole line when it writes GeoJSON.
 */
export function linesBlob(paths: readonly ForeignPath[], srsId: number): Uint8Array {
  const hasZ = paths.every(({ elevationM }) => elevationM.every((height) => !Number.isNaN(height)));
  const size = hasZ ? 24 : 16;
  const points = paths.reduce((sum, { lng }) => sum + lng.length, 0);
  const view = new DataView(new ArrayBuffer(HEADER + 32 + 9 + 9 * paths.length + size * points));
  header(view, srsId, 1);
  const box = boxOf(paths);
  box.forEach((edge, i) => view.setFloat64(HEADER + 8 * i, edge, true));
  let at = wkb(view, HEADER + 32, MULTI_LINE + (hasZ ? WITH_Z : 0));
  view.setUint32(at, paths.length, true);
  at += 4;
  for (const { lng, lat, elevationM } of paths) {
    at = wkb(view, at, LINE + (hasZ ? WITH_Z : 0));
    view.setUint32(at, lng.length, true);
    at += 4;
    for (let i = 0; i < lng.length; i++, at += size) {
      view.setFloat64(at, lng[i], true);
      view.setFloat64(at + 8, lat[i], true);
      if (hasZ) view.setFloat64(at + 16, elevationM[i], true);
    }
  }
  return new Uint8Array(view.buffer);
}

function header(view: DataView, srsId: number, envelope: 0 | 1): void {
  view.setUint16(0, 0x4750);
  view.setUint8(3, (envelope << 1) | 1);
  view.setInt32(4, srsId, true);
}

function wkb(view: DataView, at: number, type: number): number {
  view.setUint8(at, 1);
  view.setUint32(at + 1, type, true);
  return at + 5;
}

/** West, east, south, north as an envelope has them: least and greatest x, then y. Empty is the wrong way round. */
export function boxOf(paths: readonly ForeignPath[]): [number, number, number, number] {
  const box: [number, number, number, number] = [Infinity, -Infinity, Infinity, -Infinity];
  for (const { lng, lat } of paths)
    for (let i = 0; i < lng.length; i++) {
      box[0] = Math.min(box[0], lng[i]);
      box[1] = Math.max(box[1], lng[i]);
      box[2] = Math.min(box[2], lat[i]);
      box[3] = Math.max(box[3], lat[i]);
    }
  return box;
}

/** Reads a GeoPackageBinary of anyone's; null where it is none or ends early. Never longer than its bytes. */
export function geometryOf(blob: Uint8Array): Geometry | null {
  if (blob.length < HEADER + 5 || blob[0] !== 0x47 || blob[1] !== 0x50) return null;
  const flags = blob[3];
  const envelope = ENVELOPES[(flags >> 1) & 7];
  if (envelope === undefined || (flags & 0x20) !== 0) return null;
  if ((flags & 0x10) !== 0) return { kind: 'other', paths: [] };
  const view = new DataView(blob.buffer, blob.byteOffset, blob.byteLength);
  try {
    return read(view, HEADER + envelope, 0).geometry;
  } catch (error) {
    if (error instanceof RangeError) return null;
    throw error;
  }
}

interface Read {
  readonly geometry: Geometry;
  readonly end: number;
}

/** A view throws a RangeError where the bytes end: what is read is never more than they hold. */
function read(view: DataView, at: number, depth: number): Read {
  const little = view.getUint8(at) === 1;
  const type = view.getUint32(at + 1, little);
  const ordinates = type < 1000 ? 2 : type < 3000 ? 3 : 4;
  const hasZ = (type >= 1000 && type < 2000) || (type >= 3000 && type < 4000);
  const from = at + 5;
  const layout = { little, size: 8 * ordinates, hasZ };
  switch (type < 4000 ? type % 1000 : 0) {
    case POINT:
      return {
        geometry: { kind: 'point', paths: [path(view, from, 1, layout)] },
        end: from + layout.size,
      };
    case LINE: {
      const count = view.getUint32(from, little);
      return {
        geometry: { kind: 'lines', paths: count === 0 ? [] : [path(view, from + 4, count, layout)] },
        end: from + 4 + count * layout.size,
      };
    }
    case MULTI_LINE: {
      const count = view.getUint32(from, little);
      const paths: ForeignPath[] = [];
      let end = from + 4;
      for (let i = 0; i < count; i++) {
        if (depth > 0) throw new RangeError();
        const part = read(view, end, depth + 1);
        if (part.geometry.kind === 'lines') paths.push(...part.geometry.paths);
        end = part.end;
      }
      return { geometry: { kind: 'lines', paths }, end };
    }
    default:
      return { geometry: { kind: 'other', paths: [] }, end: view.byteLength };
  }
}

function path(
  view: DataView,
  from: number,
  count: number,
  { little, size, hasZ }: { readonly little: boolean; readonly size: number; readonly hasZ: boolean },
): ForeignPath {
  if (from + count * size > view.byteLength) throw new RangeError();
  const made: ForeignPath = {
    lng: new Float64Array(count),
    lat: new Float64Array(count),
    elevationM: new Float64Array(count).fill(NaN),
  };
  for (let i = 0, at = from; i < count; i++, at += size) {
    made.lng[i] = view.getFloat64(at, little);
    made.lat[i] = view.getFloat64(at + 8, little);
    if (hasZ) made.elevationM[i] = view.getFloat64(at + 16, little);
  }
  return made;
}
