import type { Problem } from '../problem.ts';
import type { ElevationGrid } from '../route/elevation.ts';
import { readElevation } from '../workers/formats.ts';
import { dropFile, keepFile, keptFile } from './keptFile.ts';
import { open } from './trip.svelte.ts';

/** A model of the ground with the name of its file. */
interface Named {
  readonly grid: ElevationGrid;
  readonly name: string;
}

/** The elevation model that is drawn under the track: the user's own, else the one that the trip came with. */
class Relief {
  #own = $state.raw<Named | null>(null);
  /** Shown under its trip and under no other. */
  #ofTrip = $state.raw<(Named & { readonly tripId: string }) | null>(null);
  /** The user's own is on this device, so that it is there again after a reload. */
  kept = $state(false);

  readonly #now = $derived(this.#own ?? (this.#ofTrip?.tripId === open.now.id ? this.#ofTrip : null));

  get grid(): ElevationGrid | null {
    return this.#now?.grid ?? null;
  }

  get name(): string | null {
    return this.#now?.name ?? null;
  }

  /** The model that a trip came with; where it cannot be read, the map is drawn without it. */
  async layUnder(tripId: string, file: Blob, name: string): Promise<void> {
    const { value } = await readElevation(new File([file], name));
    if (value !== null) this.#ofTrip = { tripId, grid: value, name };
  }

  /**
   * Takes an elevation file of the user, read off the page, and keeps a copy on the device. Answers what was wrong with it;
   * rejects only when cancelled.
   */
  async take(
    file: File,
    onProgress?: (share: number) => void,
    signal?: AbortSignal,
  ): Promise<readonly Problem[]> {
    const { value, problems } = await readElevation(file, onProgress, signal);
    if (value !== null) {
      this.#own = { grid: value, name: file.name };
      this.kept = await keepFile('elevation', file);
    }
    return problems;
  }

  /** Lays the model that was kept, unless another was taken by then. */
  async restore(): Promise<void> {
    const file = await keptFile('elevation');
    if (file === null || this.#own !== null) return;
    const { value } = await readElevation(file);
    if (value === null || this.#own !== null) return;
    this.#own = { grid: value, name: file.name };
    this.kept = true;
  }

  /** Takes away what lies there. */
  async forget(): Promise<void> {
    if (this.#own === null) {
      this.#ofTrip = null;
      return;
    }
    this.#own = null;
    this.kept = false;
    await dropFile('elevation');
  }
}

export const relief = new Relief();

/** Whether a file by its name is an elevation model and not a track or a trip. */
export function isRelief(name: string): boolean {
  return /\.(hgt|asc|asc\.gz|tiff?)$/i.test(name);
}
