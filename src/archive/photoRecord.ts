import { bareImage } from '../terrain/bareImage.ts';
import { imageSize } from '../terrain/imageSize.ts';
import type { Obstacle } from '../terrain/obstacle.ts';
import type { Photo } from '../terrain/photo.ts';
import { imageType } from '../terrain/photo.ts';
import { fromBase64 } from './base64.ts';
import { TRIP_LIMITS } from './limits.ts';
import type { Plain, Reader } from './reader.ts';
import { say } from '../words/words.ts';

export const PHOTO_NAMES = ['id', 'caption', 'image'];

/** How the base64 of an image that `imageType` knows begins: JPEG, PNG, WebP. */
export const IMAGE_PATTERN = '^(/9j/|iVBORw0KGgo|UklGR.{7}RUJQ)[A-Za-z0-9+/]*={0,2}$';

/** Length of an image in base64. */
export const IMAGE_LENGTH = 4 * Math.ceil(TRIP_LIMITS.photoBytes / 3);

/** Reads a photo, its image out of text or bytes; null where that is no image. `ids` holds the ids of all before it. */
export function photoFrom(reader: Reader, value: unknown, where: string, ids: Set<string>): Photo | null {
  const record = reader.record(value, where, PHOTO_NAMES);
  if (record === null) return null;
  const id = reader.id(record.id, `${where}.id`, ids, `photo-${ids.size + 1}`);
  const caption = reader.text(record.caption, `${where}.caption`);
  const image = imageOf(record.image);
  const fault = faultOf(image);
  if (image !== null && fault === null) return { id, caption, image: bareImage(image) };
  reader.error(`${where}.image`, fault ?? say.tripFile.noImage, say.tripFile.photoLeftOut);
  return null;
}

/** Why an image is not kept. One whose head tells no size cannot be drawn, and harms nobody. */
function faultOf(image: Uint8Array | null): string | null {
  if (image === null || imageType(image) === null) return say.tripFile.noImage;
  if (image.length > TRIP_LIMITS.photoBytes)
    return say.tripFile.longImage(image.length, TRIP_LIMITS.photoBytes);
  const size = imageSize(image);
  if (size === null || size.widthPx * size.heightPx <= TRIP_LIMITS.photoPixels) return null;
  return say.tripFile.manyPixels(size.widthPx, size.heightPx, TRIP_LIMITS.photoPixels);
}

function imageOf(value: unknown): Uint8Array<ArrayBuffer> | null {
  if (value instanceof Uint8Array) return value as Uint8Array<ArrayBuffer>;
  return typeof value === 'string' && value.length <= IMAGE_LENGTH ? fromBase64(value) : null;
}

/** All photos of a trip. */
export function photosOf(obstacles: readonly Obstacle[]): Photo[] {
  return obstacles.flatMap(({ photos }) => photos);
}

/** The obstacles with something done to each photo; what becomes of none is left out. */
export function withPhotos(
  obstacles: readonly Obstacle[],
  change: (photo: Photo) => Photo | null,
): readonly Obstacle[] {
  return obstacles.map((obstacle) => ({
    ...obstacle,
    photos: obstacle.photos.flatMap((photo) => change(photo) ?? []),
  }));
}

/** A filed record, whatever its state, with the images put in that were kept apart from it, by photo id. */
export function withImages(record: Plain, images: ReadonlyMap<unknown, Uint8Array>): Plain {
  return inEach(record, 'obstacles', (obstacle) =>
    inEach(obstacle, 'photos', (photo) => ({ ...photo, image: images.get(photo.id) ?? null })),
  );
}

/** The record with each record of one of its lists changed; anything else stays. */
function inEach(record: Plain, name: string, change: (one: Plain) => Plain): Plain {
  const list = record[name];
  if (!Array.isArray(list)) return record;
  const isRecord = (one: unknown): one is Plain => typeof one === 'object' && one !== null;
  return { ...record, [name]: list.map((one: unknown) => (isRecord(one) ? change(one) : one)) };
}
