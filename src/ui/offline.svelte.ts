import type { Said } from '../offline/kept.ts';
import { keep } from '../offline/keeper.ts';
import { say } from '../words/words.ts';
import { notices } from './notice.svelte.ts';
import { open } from './trip.svelte.ts';

const SCRIPT = 'service-worker.js';

/** Whether the program works without a network on this device, and the offer of a newer one. */
class Offline {
  ready = $state.raw(false);

  async begin(): Promise<void> {
    try {
      await keep(SCRIPT, { said: (said) => this.#hear(said), newer: (use) => this.#offer(use) });
    } catch {
      this.#hear({ kept: false, noRoom: false });
    }
  }

  #hear(said: Said): void {
    if (said.kept) this.ready = true;
    else if (!this.ready)
      notices.stand({
        words: said.noRoom ? say.notices.noRoomOffline : say.notices.notKeptOffline,
      });
    else if (said.noRoom)
      notices.stand({
        words: say.notices.noRoomForNewer,
      });
  }

  #offer(use: () => Promise<void>): void {
    notices.stand({
      words: say.notices.newer,
      action: { name: say.notices.useNewer, run: () => void this.#use(use) },
    });
  }

  /** Begins anew with the newer program, once the trip is stored. */
  async #use(use: () => Promise<void>): Promise<void> {
    await open.flush();
    if (open.keeping.state === 'failed') {
      this.#offer(use);
      notices.say(say.header.storeFirst);
      return;
    }
    await use();
    location.reload();
  }
}

export const offline = new Offline();
