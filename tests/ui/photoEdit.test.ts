import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { readTrip } from '../../src/archive/share.ts';
import { addPhotos, captionPhoto, removePhoto, roomFor } from '../../src/ui/photoEdit.ts';

const [obstacle] = readTrip(readFileSync('tests/archive/in/version-2.json', 'utf8')).value!.obstacles;
const [photo] = obstacle.photos;

test('photos are added up to the most that a trip file holds', () => {
  const many = Array.from({ length: 30 }, (_, i) => ({ ...photo, id: `p${i}` }));
  expect(roomFor(obstacle)).toBe(23);
  const full = addPhotos(obstacle, many);
  expect(full.photos).toHaveLength(24);
  expect(full.photos[0]).toBe(photo);
  expect(roomFor(full)).toBe(0);
});

test('a photo is captioned and removed by its id', () => {
  const two = addPhotos(obstacle, [{ ...photo, id: 'other' }]);
  const told = captionPhoto(two, 'other', 'From the left');
  expect(told.photos.map(({ caption }) => caption)).toEqual(['The ledge from below', 'From the left']);
  expect(told.photos[1].image).toBe(photo.image);
  expect(removePhoto(told, photo.id).photos.map(({ id }) => id)).toEqual(['other']);
});
