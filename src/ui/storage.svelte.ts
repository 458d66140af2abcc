import { keep } from '../archive/store.ts';
import { watchArchive } from '../workers/archive.ts';
import { DEMO_ID } from './demo.ts';
import { open } from './trip.svelte.ts';

/** How much of the device the program takes, and whether the browser may clear it. */
class DeviceStorage {
  /** Bytes in use and bytes that the browser gives; null where it does not tell. */
  room = $state.raw<{ readonly usedBytes: number; readonly givenBytes: number } | null>(null);
  persisted = $state<boolean | null>(null);
  /** Whether it was asked on this page, and so an answer was given. */
  asked = $state(false);

  /** Whether anything went into the archive while this page was open. */
  #archived = $state(false);

  /**
   * Asks the browser to keep everything once there is a trip of one's own, or something went into the archive: before that
   * there is nothing to lose.
   */
  begin(): void {
    void this.look();
    watchArchive((done) => {
      if (done !== 'regrade' && done !== 'remove') this.#archived = true;
    });
    $effect.root(() => {
      $effect(() => {
        const own = open.keeping.state === 'kept' && open.now.id !== DEMO_ID && open.undoes !== null;
        if ((own || this.#archived) && !this.asked && this.persisted === false) void this.ask();
      });
    });
  }

  async ask(): Promise<void> {
    this.asked = true;
    this.persisted = await keep();
  }

  async look(): Promise<void> {
    try {
      const { usage, quota } = await navigator.storage.estimate();
      this.room = usage === undefined || quota === undefined ? null : { usedBytes: usage, givenBytes: quota };
      this.persisted = await navigator.storage.persisted();
    } catch {
      this.room = null;
    }
  }
}

export const storage = new DeviceStorage();
