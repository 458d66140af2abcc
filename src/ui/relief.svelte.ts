import type { Problem } from '../problem.ts';
import type { ElevationGrid } from '../route/elevation.ts';
import { readElevation } from '../workers/formats.ts';
import { dropFile, keepFile, keptFile } from './keptFile.ts';

/** The user's own elevation model, drawn under the track. */
class Relief {
  grid = $state.raw<ElevationGrid | null>(null);
  name = $state.raw<string | null>(null);
  /** On this device, so that it is there again after a reload. */
  kept = $state(false);

  /** Takes an elevation file, read off the page; answers what was wrong with it. Rejects only when cancelled. */
  async read(
    file: Blob,
    name: string,
    onProgress?: (share: number) => void,
    signal?: AbortSignal,
  ): Promise<readonly Problem[]> {
    const { value, problems } = await readElevation(new File([file], name), onProgress, signal);
    if (value !== null) {
      this.grid = value;
      this.name = name;
      this.kept = false;
    }
    return problems;
  }

  /** Takes it and keeps a copy on the device. */
  async take(
    file: File,
    onProgress?: (share: number) => void,
    signal?: AbortSignal,
  ): Promise<readonly Problem[]> {
    const before = this.grid;
    const problems = await this.read(file, file.name, onProgress, signal);
    if (this.grid !== before) this.kept = await keepFile('elevation', file);
    return problems;
  }

  /** Lays the model that was kept, unless another lies there by then. */
  async restore(): Promise<void> {
    const file = await keptFile('elevation');
    if (file === null || this.grid !== null) return;
    const { value } = await readElevation(file);
    if (value === null || this.grid !== null) return;
    this.grid = value;
    this.name = file.name;
    this.kept = true;
  }

  async forget(): Promise<void> {
    this.grid = null;
    this.name = null;
    this.kept = false;
    await dropFile('elevation');
  }
}

export const relief = new Relief();

/** Whether a file by its name is an elevation model and not a track or a trip. */
export function isRelief(name: string): boolean {
  return /\.(hgt|asc|asc\.gz|tiff?)$/i.test(name);
}
