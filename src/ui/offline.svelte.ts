import type { Said } from '../offline/kept.ts';
import { keep } from '../offline/keeper.ts';
import { say } from '../words/words.ts';
import { mayBeginAnew } from './beginAnew.ts';
import { notices } from './notice.svelte.ts';

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

  /** Begins anew with the newer program, once nothing is lost by it; until then it is offered again. */
  async #use(use: () => Promise<void>): Promise<void> {
    if (!(await mayBeginAnew())) {
      this.#offer(use);
      return;
    }
    await use();
    location.reload();
  }
}

export const offline = new Offline();
