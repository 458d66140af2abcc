/** A place on the map that wants a tag with its number and, where there is room, its name; pixels. */
export interface Marked {
  readonly id: string;
  readonly x: number;
  readonly y: number;
  readonly nameWidthPx: number;
}

/** Where the tag of a mark stands, seen from its place, and whether the name is written. */
export interface Tag {
  readonly side: Side;
  readonly named: boolean;
}

/** In order of preference. */
export const SIDES = ['right-above', 'left-above', 'right-below', 'left-below'] as const;

export type Side = (typeof SIDES)[number];

/** Sides on which names are written; below, they would be taken for those of what lies there. */
const ABOVE = SIDES.slice(0, 2);

/** The tag's corner lies this far from the place, across and up or down; the number's box and the tag's height. */
export const REACH_PX = { x: 11, y: 22 };
const NUMBER_PX = 24;
const HEIGHT_PX = 24;

interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/**
 * Tags that do not cover each other where that can be had, and stay in a frame of the given width. Numbers are
 * always shown; names where they are clear, the chosen one's always. Earlier marks choose first.
 */
export function tagsOf(
  marks: readonly Marked[],
  chosenId: string | null,
  widthPx: number,
): ReadonlyMap<string, Tag> {
  const tags = new Map<string, Tag>();
  const taken: Box[] = [];
  const inFrame = ({ left, right }: Box) => left >= 0 && right <= widthPx;
  const clear = (box: Box) => inFrame(box) && taken.every((other) => !overlap(box, other));
  const ranked = [...marks].sort((a, b) => Number(b.id === chosenId) - Number(a.id === chosenId));
  for (const mark of ranked) {
    const whole = NUMBER_PX + mark.nameWidthPx;
    const named = ABOVE.find((side) => clear(boxOf(mark, side, whole)));
    const bare = named ?? SIDES.find((side) => clear(boxOf(mark, side, NUMBER_PX)));
    const tag = { side: bare ?? SIDES[0], named: named !== undefined || mark.id === chosenId };
    tags.set(mark.id, tag);
    taken.push(boxOf(mark, tag.side, tag.named ? whole : NUMBER_PX));
  }
  return tags;
}

function boxOf({ x, y }: Marked, side: Side, width: number): Box {
  const left = side.startsWith('right') ? x + REACH_PX.x : x - REACH_PX.x - width;
  const top = side.endsWith('above') ? y - REACH_PX.y - HEIGHT_PX : y + REACH_PX.y;
  return { left, right: left + width, top, bottom: top + HEIGHT_PX };
}

function overlap(a: Box, b: Box): boolean {
  return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}
