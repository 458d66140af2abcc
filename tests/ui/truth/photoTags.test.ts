import { describe, expect, test } from 'vitest';
import { photoTags, tagsFrom } from '../../../src/ui/photoTags.ts';
import { withExif } from '../../exif.ts';

/** Start of image and end of image: all that stands round the tags. */
const BARE = Uint8Array.from([0xff, 0xd8, 0xff, 0xd9]);

/**
 * Exif 2.3 (CIPA DC-008-2012): 4.6.6 table 15, GPS tags as degrees, minutes and seconds with their reference; 4.6.5, date
 * and time as "YYYY:MM:DD HH:MM:SS". Exif 2.31 (CIPA DC-008-2016), 4.6.5: the offset from universal time as "±HH:MM".
 */
describe('Exif tags, written byte by byte', () => {
  test.each([
    { lat: 45.123456, lng: 7.654321 },
    { lat: -33.4235955, lng: 88.5631898 },
    { lat: 0.5, lng: -0.25 },
    { lat: -54.8, lng: -68.3 },
  ])('the position $lat, $lng is read to a hundred-thousandth of a second of arc', async (place) => {
    const { lat, lng } = await photoTags(withExif(BARE, place));
    expect(lat).toBeCloseTo(place.lat, 8);
    expect(lng).toBeCloseTo(place.lng, 8);
  });

  test('the time is that of the camera, with its zone where it tells one', async () => {
    const tags = await photoTags(withExif(BARE, { time: '2026:05:01 10:20:30', offset: '-03:30' }));
    expect(tags.clockS).toBe(Date.parse('2026-05-01T10:20:30Z') / 1000);
    expect(tags.zoneS).toBe(-3.5 * 3600);
    const bare = await photoTags(withExif(BARE, { time: '2026:05:01 10:20:30' }));
    expect(bare.zoneS).toBeNull();
  });

  test('the time of the satellites is universal', async () => {
    const { gpsS } = await photoTags(withExif(BARE, { gpsDate: '2026:05:01', gpsTime: [8, 20, 31] }));
    expect(gpsS).toBe(Date.parse('2026-05-01T08:20:31Z') / 1000);
  });
});

test('what is not there or makes no sense counts as not written', async () => {
  const nothing = { lng: null, lat: null, clockS: null, zoneS: null, gpsS: null };
  expect(await photoTags(BARE)).toEqual(nothing);
  expect(await photoTags(Uint8Array.from([1, 2, 3]))).toEqual(nothing);
  expect(await photoTags(withExif(BARE, { lat: 0, lng: 0, time: '0000:00:00 00:00:00' }))).toEqual(nothing);
  expect(tagsFrom({ longitude: NaN, latitude: 91, DateTimeOriginal: 7, GPSTimeStamp: [1] })).toEqual(nothing);
});
