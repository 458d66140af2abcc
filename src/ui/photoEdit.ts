import { TRIP_LIMITS } from '../archive/limits.ts';
import type { Obstacle } from '../terrain/obstacle.ts';
import type { Photo } from '../terrain/photo.ts';
import { redrawnInWorker } from '../workers/photo.ts';
import { say } from '../words/words.ts';

/** Enough to see a rut's edge across a screen, and small enough to carry two dozen an obstacle. */
const MOST_PX = 1600;

/** A picked file as a photo to keep, or a sentence that says why not. */
export async function photoOf(file: File, id: string): Promise<Photo | string> {
  try {
    const { image, fault } = await redrawnInWorker({
      file,
      mostPx: MOST_PX,
      mostBytes: TRIP_LIMITS.photoBytes,
    });
    return image === null ? say.photos.fault[fault](file.name) : { id, caption: '', image };
  } catch (error) {
    return say.photos.notRead(file.name, String(error));
  }
}

/** How many more photos an obstacle takes. */
export function roomFor({ photos }: Obstacle): number {
  return Math.max(0, TRIP_LIMITS.photos - photos.length);
}

export function addPhotos(obstacle: Obstacle, photos: readonly Photo[]): Obstacle {
  return { ...obstacle, photos: [...obstacle.photos, ...photos].slice(0, TRIP_LIMITS.photos) };
}

export function captionPhoto(obstacle: Obstacle, id: string, caption: string): Obstacle {
  const photos = obstacle.photos.map((photo) => (photo.id === id ? { ...photo, caption } : photo));
  return { ...obstacle, photos };
}

export function removePhoto(obstacle: Obstacle, id: string): Obstacle {
  return { ...obstacle, photos: obstacle.photos.filter((photo) => photo.id !== id) };
}
