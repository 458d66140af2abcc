/** What a camera wrote beside the picture of where and when it was taken; null where it did not. */
export interface PhotoTags {
  readonly lng: number | null;
  readonly lat: number | null;
  /** What its clock showed, as seconds since 1970-01-01T00:00:00 of that clock. */
  readonly clockS: number | null;
  /** How far that clock's zone is ahead of universal time. */
  readonly zoneS: number | null;
  /** Universal time of its satellite receiver. */
  readonly gpsS: number | null;
}

const NOTHING: PhotoTags = { lng: null, lat: null, clockS: null, zoneS: null, gpsS: null };

/** Reads the Exif tags of a picture (CIPA DC-008, Exif 2.3 and, for the zone, 2.31). Anything odd counts as not written. */
export async function photoTags(file: Blob | Uint8Array): Promise<PhotoTags> {
  const { parse } = await import('exifr/dist/lite.esm.mjs');
  try {
    const options = { tiff: true, exif: true, gps: true, reviveValues: false, translateValues: false };
    return tagsFrom((await parse(file, options)) as unknown);
  } catch {
    return NOTHING;
  }
}

/** The tags by their names in the standard, with the position as decimal degrees. */
export function tagsFrom(tags: unknown): PhotoTags {
  if (typeof tags !== 'object' || tags === null) return NOTHING;
  const { longitude, latitude, DateTimeOriginal, OffsetTimeOriginal, GPSDateStamp, GPSTimeStamp } =
    tags as Readonly<Record<string, unknown>>;
  return {
    ...placeFrom(longitude, latitude),
    clockS: clockFrom(DateTimeOriginal),
    zoneS: zoneFrom(OffsetTimeOriginal),
    gpsS: gpsFrom(GPSDateStamp, GPSTimeStamp),
  };
}

/** Cameras without a fix write zero and zero, which lies in the open sea. */
function placeFrom(lng: unknown, lat: unknown): Pick<PhotoTags, 'lng' | 'lat'> {
  const there = typeof lng === 'number' && typeof lat === 'number' && (lng !== 0 || lat !== 0);
  return there && Math.abs(lng) <= 180 && Math.abs(lat) <= 90 ? { lng, lat } : { lng: null, lat: null };
}

/** `2026:05:01 10:20:30` */
function clockFrom(text: unknown): number | null {
  const found = /^(\d{4}):(\d\d):(\d\d) (\d\d):(\d\d):(\d\d)/.exec(typeof text === 'string' ? text : '');
  return found && utcS(found.slice(1).map(Number));
}

/** `+02:00` */
function zoneFrom(text: unknown): number | null {
  const found = /^([+-])(\d\d):(\d\d)/.exec(typeof text === 'string' ? text : '');
  if (found === null) return null;
  return (found[1] === '-' ? -1 : 1) * (Number(found[2]) * 3600 + Number(found[3]) * 60);
}

/** `2026:05:01` and hours, minutes, seconds. */
function gpsFrom(date: unknown, time: unknown): number | null {
  const found = /^(\d{4}):(\d\d):(\d\d)/.exec(typeof date === 'string' ? date : '');
  const hours = Array.isArray(time) || ArrayBuffer.isView(time) ? Array.from(time as ArrayLike<number>) : [];
  return found && hours.length === 3 ? utcS([...found.slice(1).map(Number), ...hours]) : null;
}

function utcS([year, month, day, hours, minutes, seconds]: readonly number[]): number | null {
  const timeS = Date.UTC(year, month - 1, day, hours, minutes) / 1000 + seconds;
  return year > 0 && month > 0 && Number.isFinite(timeS) ? timeS : null;
}
