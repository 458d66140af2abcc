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

/** Photos that wait for the leader's word, of all trips. They are no part of a trip, and gone with the page. */
class PhotoPins {
  #found = $state.raw<readonly (Found & { readonly tripId: string })[]>([]);
  adding = $state.raw<{ readonly done: number; readonly of: number } | null>(null);
  faults = $state.raw<readonly string[]>([]);
  /** How far the camera's clock runs ahead. */
  aheadS = $state(0);

  /** Those of the open trip. */
  readonly list: readonly Found[] = $derived.by(() =>
    this.#found.filter(({ tripId }) => tripId === open.now.id),
  );

  /** Whether any are waiting, or about to. */
  get isWaiting(): boolean {
    return this.adding !== null || this.#found.length > 0;
  }

  async read(files: readonly File[]): Promise<void> {
    const tripId = open.now.id;
    const said: string[] = [];
    for (const [done, file] of files.entries()) {
      this.adding = { done, of: files.length };
      const [tags, photo] = await Promise.all([photoTags(file), photoOf(file, newId())]);
      if (typeof photo === 'string') said.push(photo);
      else this.#found = [...this.#found, { tripId, name: file.name, photo, tags }];
    }
    this.adding = null;
    this.faults = said;
  }

  leave({ photo }: Found): void {
    this.#found = this.#found.filter((one) => one.photo !== photo);
  }
}

export const photoPins = new PhotoPins();
