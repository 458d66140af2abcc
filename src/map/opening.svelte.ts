import { untrack } from 'svelte';
import type { Inks, Scheme } from './inks.ts';
import { inksOf } from './inks.ts';
import type { Bounds, MapView } from './map.svelte.ts';

/** A map that is opened in an element of the page and closed with it. Its library comes after the rest of the page. */
export class Opening {
  container = $state<HTMLElement>();
  /** Null until the map can be drawn upon. */
  view = $state.raw<MapView | null>(null);
  /** Why it cannot be drawn on this device. */
  failure = $state<string | null>(null);
  readonly #scheme: () => Scheme;
  readonly inks: Inks | null = $derived.by(() =>
    this.view && this.container ? inksOf(this.container, this.#scheme()) : null,
  );

  /** Of a component that is being set up. `bounds` is asked once, when the map opens; `also` is loaded with it. */
  constructor(
    bounds: () => Bounds,
    scheme: () => Scheme,
    also: () => Promise<unknown> = () => Promise.resolve(),
  ) {
    this.#scheme = scheme;
    $effect(() => {
      const element = this.container;
      if (!element) return;
      let closed = false;
      let opened: MapView | null = null;
      const frame = untrack(bounds);
      const first = untrack(() => inksOf(element, scheme()));
      Promise.all([import('./map.svelte.ts'), also()])
        .then(([{ MapView }]) => MapView.open(element, frame, first))
        .then((ready) => {
          opened = ready;
          if (closed) ready.close();
          else this.view = ready;
        })
        .catch((error: unknown) => (this.failure = error instanceof Error ? error.message : String(error)));
      return () => {
        closed = true;
        this.view = null;
        opened?.close();
      };
    });
  }
}
