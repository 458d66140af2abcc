/** Before which item of a list something at a place along it would be put: after all whose middle lies before it. */
export function placeAt(along: number, middles: readonly number[]): number {
  return middles.filter((middle) => middle < along).length;
}

/** An item of a list that is dragged to another place in it; the list stays as it is until it is let go. */
export class DragOrder {
  readonly #items: () => readonly HTMLElement[];
  readonly #put: (from: number, before: number) => void;
  readonly #runs: 'down' | 'across';

  /** Index of what is dragged; null while nothing is. */
  from = $state.raw<number | null>(null);
  /** The item that it would be put before; as many as there are, for behind the last. */
  before = $state.raw(0);

  constructor(
    items: () => readonly HTMLElement[],
    put: (from: number, before: number) => void,
    runs: 'down' | 'across' = 'down',
  ) {
    this.#items = items;
    this.#put = put;
    this.#runs = runs;
  }

  /** Where the mark belongs; null where letting go would change nothing. */
  readonly mark: number | null = $derived.by(() => {
    const { from, before } = this;
    return from === null || before === from || before === from + 1 ? null : before;
  });

  take(event: PointerEvent, index: number): void {
    if (event.button !== 0) return;
    (event.currentTarget as Element).setPointerCapture(event.pointerId);
    this.from = index;
    this.before = index;
  }

  move({ clientX, clientY }: PointerEvent): void {
    if (this.from === null) return;
    const items = this.#items();
    const down = this.#runs === 'down';
    const middles = items.map((item) => {
      const { top, left, height, width } = item.getBoundingClientRect();
      return down ? top + height / 2 : left + width / 2;
    });
    this.before = placeAt(down ? clientY : clientX, middles);
    const near = { block: 'nearest', inline: 'nearest' } as const;
    items[Math.min(this.before, items.length - 1)]?.scrollIntoView(near);
    items[Math.max(this.before - 1, 0)]?.scrollIntoView(near);
  }

  letGo(): void {
    const { from, mark } = this;
    this.from = null;
    if (from !== null && mark !== null) this.#put(from, mark);
  }

  drop(): void {
    this.from = null;
  }
}
