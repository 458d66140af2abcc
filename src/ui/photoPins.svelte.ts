import type { Photo } from '../terrain/photo.ts';
import { newId } from './identity.ts';
import { photoOf } from './photoEdit.ts';
import type { PhotoTags } from './photoTags.ts';
import { photoTags } from './photoTags.ts';
import { open } from './trip.svelte.ts';

/** A photo from which an obstacle may be pinned, until the leader takes it or leaves it. */
export interface Found {
  readonly name: string;
  readonly photo: Photo;
  readonly tags: PhotoTags;
}

/** Photos that wait for the leader's word. They are no part of the trip, and gone with the page. */
class PhotoPins {
  #found = $state.raw<{ readonly tripId: string; readonly list: readonly Found[] }>({ tripId: '', list: [] });
  adding = $state.raw<{ readonly done: number; readonly of: number } | null>(null);
  faults = $state.raw<readonly string[]>([]);
  /** How far the camera's clock runs ahead. */
  aheadS = $state(0);

  get list(): readonly Found[] {
    return this.#found.tripId === open.now.id ? this.#found.list : [];
  }

  async read(files: readonly File[]): Promise<void> {
    const tripId = open.now.id;
    const said: string[] = [];
    for (const [done, file] of files.entries()) {
      this.adding = { done, of: files.length };
      const [tags, photo] = await Promise.all([photoTags(file), photoOf(file, newId())]);
      if (typeof photo === 'string') said.push(photo);
      else this.#found = { tripId, list: [...this.list, { name: file.name, photo, tags }] };
    }
    this.adding = null;
    this.faults = said;
  }

  leave({ photo }: Found): void {
    this.#found = { ...this.#found, list: this.#found.list.filter((one) => one.photo !== photo) };
  }
}

export const photoPins = new PhotoPins();
