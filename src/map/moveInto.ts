import type { MapView } from './map.svelte.ts';

/** Moves an element into the map's frame, under what stands over it; there Svelte does not find it to take it off, so that this does. */
export function moveInto(node: Element, view: MapView): { readonly destroy: () => void } {
  view.frame.append(node);
  return { destroy: () => node.remove() };
}
