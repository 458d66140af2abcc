/** A sentence about what just happened, and the way back where there is one. */
export interface Notice {
  readonly words: string;
  readonly action?: { readonly name: string; readonly run: () => void };
}

class Notices {
  now = $state.raw<Notice | null>(null);

  say(words: string, action?: Notice['action']): void {
    this.now = action === undefined ? { words } : { words, action };
  }

  dismiss(): void {
    this.now = null;
  }
}

export const notices = new Notices();
