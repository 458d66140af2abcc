import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { readTrip, tripToJson } from '../../src/archive/share.ts';
import { problemText } from '../../src/problem.ts';

type Json = Record<string, unknown>;

const WHOLE = readFileSync(new URL('in/version-4.json', import.meta.url), 'utf8');

/** The whole trip with another image in its one photo. */
function readWithImage(image: unknown) {
  const trip = JSON.parse(WHOLE) as { obstacles: { photos: Json[] }[] };
  trip.obstacles[0].photos[0].image = image;
  return readTrip(JSON.stringify(trip));
}

function base64(text: string): string {
  return Buffer.from(text, 'latin1').toString('base64');
}

describe('a photo of a trip file', () => {
  test('is read, and written as it was, with the radio channel that files had no name for', () => {
    const { value, problems } = readTrip(WHOLE);
    expect(problems).toEqual([]);
    const [photo] = value!.obstacles[0].photos;
    expect(photo.caption).toBe('The ledge from below');
    expect([...photo.image.subarray(0, 4)]).toEqual([0x89, 0x50, 0x4e, 0x47]);
    expect(JSON.parse(tripToJson(value!))).toEqual({ ...(JSON.parse(WHOLE) as Json), radioChannel: '' });
  });

  test.each([
    ['markup', base64('<svg xmlns="http://www.w3.org/2000/svg"><script>alert(1)</script></svg>')],
    ['a page', base64('<!doctype html><script>alert(1)</script>')],
    ['an address', 'https://example.org/a.jpg'],
    ['an address that holds an image', `data:image/svg+xml;base64,${base64('<svg/>')}`],
    ['another kind of image', base64('GIF89a')],
    ['a RIFF file that is no WebP', base64('RIFF\x04\0\0\0WAVE')],
    ['text that is no base64', '/9j/*'],
    ['base64 that lost its end', '/9j/A'],
    ['nothing', ''],
    ['bytes one by one', [0xff, 0xd8, 0xff]],
  ])('is left out where it is %s, and that is said', (_, image) => {
    const { value, problems } = readWithImage(image);
    expect(value!.obstacles[0].photos).toEqual([]);
    expect(problems.map(problemText)).toEqual([
      'error: obstacles[0].photos[0].image: This is no JPEG, PNG or WebP image. The photo was left out. Add it again.',
    ]);
  });

  test('is bounded in size and number', () => {
    const large = Buffer.concat([Buffer.from([0xff, 0xd8, 0xff]), Buffer.alloc(2_999_998)]);
    expect(readWithImage(large.toString('base64')).value!.obstacles[0].photos).toEqual([]);
    const fits = large.subarray(0, 3_000_000).toString('base64');
    expect(readWithImage(fits).value!.obstacles[0].photos).toHaveLength(1);
    const trip = JSON.parse(WHOLE) as { obstacles: { photos: Json[] }[] };
    const [photo] = trip.obstacles[0].photos;
    trip.obstacles[0].photos = Array.from({ length: 25 }, (_, i) => ({ ...photo, id: `p${i}` }));
    const { value, problems } = readTrip(JSON.stringify(trip));
    expect(value!.obstacles[0].photos).toHaveLength(24);
    expect(problems).toHaveLength(1);
  });
});

test('a trip from before photos has none', () => {
  const text = readFileSync(new URL('in/version-1.json', import.meta.url), 'utf8');
  expect(readTrip(text).value!.obstacles[0].photos).toEqual([]);
});
