import type { Said } from '../offline/kept.ts';
import { keep } from '../offline/keeper.ts';
import { notices } from './notice.svelte.ts';
import { open } from './trip.svelte.ts';

const SCRIPT = 'service-worker.js';
const ONLINE_STILL = 'It works as long as there is a network.';

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
        words: said.noRoom
          ? `This device has no room to keep Rutline for use without network. ${ONLINE_STILL}`
          : `Rutline could not be kept on this device for use without network; it is tried again when it is next opened. ${ONLINE_STILL}`,
      });
    else if (said.noRoom)
      notices.stand({
        words: 'There is a newer Rutline, and no room on this device to keep it. This one works on as it is.',
      });
  }

  #offer(use: () => Promise<void>): void {
    notices.stand({
      words: 'A newer Rutline is here',
      action: { name: 'Use it now', run: () => void this.#use(use) },
    });
  }

  /** Begins anew with the newer program, once the trip is stored. */
  async #use(use: () => Promise<void>): Promise<void> {
    await open.flush();
    if (open.keeping.state === 'failed') {
      this.#offer(use);
      notices.say('First see to it that this trip is stored: what is not would be lost.');
      return;
    }
    await use();
    location.reload();
  }
}

export const offline = new Offline();
