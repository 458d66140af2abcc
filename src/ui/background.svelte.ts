import type { Background } from '../map/background.ts';
import type { Problem } from '../problem.ts';
import { say } from '../words/words.ts';
import { dropFile, keepFile, keptFile } from './keptFile.ts';
import { forgetAddress, typedAddress } from './tileAddress.ts';

/** What lies under the map, as the user chose it: nothing, a file of tiles, or a server of theirs. */
class MapBackground {
  now = $state.raw<Background | null>(null);
  /** On this device, so that it is there again after a reload. */
  kept = $state(false);

  /** Lays a PMTiles file and keeps a copy of it; answers what was wrong. */
  async take(file: File): Promise<readonly Problem[]> {
    const laid = await opened(file);
    if ('what' in laid) return [laid];
    forgetAddress();
    this.now = laid;
    this.kept = await keepFile('background', file);
    return [];
  }

  /** Lays what was chosen before, unless something lies there by then. */
  async restore(): Promise<void> {
    const template = typedAddress();
    if (template !== null) {
      const { tilesAt } = await import('../map/background.ts');
      this.now ??= tilesAt(template);
      this.kept = true;
      return;
    }
    const file = await keptFile('background');
    const laid = file && (await opened(file));
    if (laid === null || 'what' in laid || this.now !== null) return;
    this.now = laid;
    this.kept = true;
  }

  /** Removes it; an address is forgotten, and this page may fetch nothing of it any more once it is loaded again. */
  async forget(): Promise<void> {
    this.now = null;
    this.kept = false;
    forgetAddress();
    await dropFile('background');
  }
}

export const background = new MapBackground();

async function opened(file: File): Promise<Background | Problem> {
  try {
    return await (await import('../map/background.ts')).openTiles(file);
  } catch (error) {
    const { ground, theFile } = say.formats;
    const fault = error instanceof Error ? error.message : String(error);
    return {
      severity: 'error',
      where: theFile,
      what: ground.noPmtiles(fault),
      done: ground.pmtilesHelp,
      times: 1,
    };
  }
}
