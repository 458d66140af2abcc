/** What a camera writes beside the picture. */
export interface Taken {
  readonly lng?: number;
  readonly lat?: number;
  /** `2026:05:01 10:20:30`, by the camera's clock. */
  readonly time?: string;
  /** `+02:00`. */
  readonly offset?: string;
  /** Universal time of the position: `2026:05:01`, and hours, minutes, seconds. */
  readonly gpsDate?: string;
  readonly gpsTime?: readonly [number, number, number];
  /** 1 upright, 6 to be turned a quarter clockwise. */
  readonly orientation?: number;
}

interface Tag {
  readonly tag: number;
  readonly type: number;
  readonly count: number;
  readonly data: Buffer;
}

/** Types of TIFF 6.0, section 2. */
const ASCII = 2;
const SHORT = 3;
const LONG = 4;
const RATIONAL = 5;

/**
 * A JPEG with an Exif APP1 segment put in after its start of image. Exif 2.3 (CIPA DC-008-2012 / JEITA CP-3451C): 4.5.4
 * and 4.7.2 for the segment, 4.6.3 for the pointers to the Exif and GPS IFDs, 4.6.6 for the GPS tags.
 */
export function withExif(jpeg: Uint8Array, taken: Taken): Buffer {
  const exif = Buffer.concat([Buffer.from('Exif\0\0', 'latin1'), tiff(taken)]);
  const head = Buffer.from([0xff, 0xe1, 0, 0]);
  head.writeUInt16BE(exif.length + 2, 2);
  return Buffer.concat([jpeg.subarray(0, 2), head, exif, jpeg.subarray(2)]);
}

function tiff(taken: Taken): Buffer {
  const exif: Tag[] = [];
  if (taken.time) exif.push(ascii(0x9003, taken.time));
  if (taken.offset) exif.push(ascii(0x9011, taken.offset));
  const gps: Tag[] = [];
  if (taken.lat !== undefined && taken.lng !== undefined)
    gps.push(
      ascii(1, taken.lat < 0 ? 'S' : 'N'),
      rationals(2, sexagesimal(taken.lat)),
      ascii(3, taken.lng < 0 ? 'W' : 'E'),
      rationals(4, sexagesimal(taken.lng)),
    );
  if (taken.gpsTime)
    gps.push(
      rationals(
        7,
        taken.gpsTime.map((value): [number, number] => [value, 1]),
      ),
    );
  if (taken.gpsDate) gps.push(ascii(0x1d, taken.gpsDate));
  const main = (exifAt: number, gpsAt: number): Tag[] => [
    { tag: 0x0112, type: SHORT, count: 1, data: le16(taken.orientation ?? 1) },
    { tag: 0x8769, type: LONG, count: 1, data: le32(exifAt) },
    { tag: 0x8825, type: LONG, count: 1, data: le32(gpsAt) },
  ];
  const exifAt = 8 + ifd(main(0, 0), 8).length;
  const gpsAt = exifAt + ifd(exif, exifAt).length;
  const header = Buffer.from([0x49, 0x49, 0x2a, 0, 8, 0, 0, 0]);
  return Buffer.concat([header, ifd(main(exifAt, gpsAt), 8), ifd(exif, exifAt), ifd(gps, gpsAt)]);
}

/** An image file directory (TIFF 6.0, section 2) that stands at `at`, with what does not fit into its entries after it. */
function ifd(tags: readonly Tag[], at: number): Buffer {
  const entries: Buffer[] = [];
  const after: Buffer[] = [];
  let next = at + 2 + 12 * tags.length + 4;
  for (const { tag, type, count, data } of tags) {
    const inside = data.length <= 4;
    entries.push(le16(tag), le16(type), le32(count));
    entries.push(inside ? Buffer.concat([data, Buffer.alloc(4 - data.length)]) : le32(next));
    if (inside) continue;
    const even = data.length % 2 === 0 ? data : Buffer.concat([data, Buffer.alloc(1)]);
    after.push(even);
    next += even.length;
  }
  return Buffer.concat([le16(tags.length), ...entries, le32(0), ...after]);
}

function ascii(tag: number, text: string): Tag {
  const data = Buffer.from(`${text}\0`, 'latin1');
  return { tag, type: ASCII, count: data.length, data };
}

function rationals(tag: number, values: readonly (readonly [number, number])[]): Tag {
  const data = Buffer.concat(values.flatMap(([over, under]) => [le32(over), le32(under)]));
  return { tag, type: RATIONAL, count: values.length, data };
}

/** Degrees, minutes, and seconds to a hundred-thousandth. */
function sexagesimal(degrees: number): [number, number][] {
  const whole = Math.abs(degrees);
  const minutes = (whole % 1) * 60;
  return [
    [Math.floor(whole), 1],
    [Math.floor(minutes), 1],
    [Math.round((minutes % 1) * 60 * 1e5), 1e5],
  ];
}

function le16(value: number): Buffer {
  const bytes = Buffer.alloc(2);
  bytes.writeUInt16LE(value);
  return bytes;
}

function le32(value: number): Buffer {
  const bytes = Buffer.alloc(4);
  bytes.writeUInt32LE(value);
  return bytes;
}
