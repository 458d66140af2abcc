import { readAsciiGrid } from '../route/asciiGrid.ts';
import type { ElevationGrid } from '../route/elevation.ts';
import { readHgt } from '../route/hgt.ts';
import type { Problem } from '../problem.ts';

/** The user's own elevation model, drawn under the track. Kept until the page is closed. */
class Relief {
  grid = $state.raw<ElevationGrid | null>(null);
  name = $state.raw<string | null>(null);

  /** Takes an elevation file; answers what was wrong with it. */
  async read(file: Blob, name: string): Promise<readonly Problem[]> {
    const bytes = new Uint8Array(await file.arrayBuffer());
    const { value, problems } = /\.hgt$/i.test(name) ? readHgt(name, bytes) : readAsciiGrid(bytes);
    if (value !== null) {
      this.grid = value;
      this.name = name;
    }
    return problems;
  }

  forget(): void {
    this.grid = null;
    this.name = null;
  }
}

export const relief = new Relief();

/** Whether a file by its name is an elevation model and not a track or a trip. */
export function isRelief(name: string): boolean {
  return /\.(hgt|asc|asc\.gz)$/i.test(name);
}
