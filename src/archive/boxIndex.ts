import Flatbush from 'flatbush';
import type { Box } from './trackRow.ts';

/** Boxes on the map, found by where they lie. */
export class BoxIndex {
  readonly #tree: Flatbush | null;
  /** What each box of the tree belongs to. */
  readonly #at: readonly number[];

  /** @param boxes those of null are never found */
  constructor(boxes: readonly (Box | null)[]) {
    this.#at = boxes.flatMap((box, i) => (box === null ? [] : [i]));
    this.#tree = this.#at.length === 0 ? null : new Flatbush(this.#at.length);
    for (const i of this.#at) this.#tree?.add(...(boxes[i] as Box));
    this.#tree?.finish();
  }

  /** Which boxes touch `box`, by their number. One whose west lies east of its east crosses the 180th meridian. */
  touching([west, south, east, north]: Box): Set<number> {
    const parts: Box[] =
      west <= east
        ? [[west, south, east, north]]
        : [
            [west, south, 180, north],
            [-180, south, east, north],
          ];
    return new Set(parts.flatMap((part) => this.#tree?.search(...part) ?? []).map((i) => this.#at[i]));
  }
}
