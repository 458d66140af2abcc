import type { Box } from './box.ts';
import { overlap, sharedPx } from './box.ts';

/** A place on the map that wants a tag with its number and, where there is room, more; pixels. */
export interface Marked {
  readonly id: string;
  readonly x: number;
  readonly y: number;
  /** Of what stands beside the number in any case. */
  readonly fixedWidthPx: number;
  /** Of what is written after it where there is room, what matters most first. */
  readonly moreWidthPx: readonly number[];
}

/** Where the tag of a mark stands, seen from its place, and how much more than the number is written. */
export interface Tag {
  readonly side: Side;
  readonly more: number;
}

/** In order of preference. */
export const SIDES = ['right-above', 'left-above', 'right-below', 'left-below'] as const;

export type Side = (typeof SIDES)[number];

/** Sides on which more is written; below, it would be taken for that of what lies there. */
const ABOVE = SIDES.slice(0, 2);

/** The tag's corner lies this far from the place, across and up or down; the number's box and the tag's height. */
export const REACH_PX = { x: 11, y: 22 };
const NUMBER_PX = 24;
const HEIGHT_PX = 24;
/** The ring and cross of the place itself, either way. */
const PLACE_PX = 9;

/**
 * Tags that do not cover each other where that can be had, and stay in a frame of the given width, clear of what is laid
 * over it. Numbers are always
 * shown; more where it is clear, of the chosen one at least the first. Earlier marks choose first.
 */
export function tagsOf(
  marks: readonly Marked[],
  chosenId: string | null,
  widthPx: number,
  covered: readonly Box[] = [],
): ReadonlyMap<string, Tag> {
  const ranked = [...marks].sort((a, b) => Number(b.id === chosenId) - Number(a.id === chosenId));
  const boxes = new Map<string, Box>();
  const tags = new Map<string, Tag>();
  const isClear = (id: string, box: Box) =>
    box.left >= 0 &&
    box.right <= widthPx &&
    !covered.some((other) => overlap(box, other)) &&
    [...boxes].every(([otherId, other]) => otherId === id || !overlap(box, other));
  /** How much of the numbers and marks that stand already a tag would hide. */
  const hidden = (mark: Marked, side: Side, more: number) => {
    const box = boxOf(mark, side, more);
    return [...boxes.values()].reduce((sum, other) => sum + sharedPx(box, other), 0);
  };
  const leastCovered = (mark: Marked, more: number) =>
    SIDES.toSorted((a, b) => hidden(mark, a, more) - hidden(mark, b, more))[0];
  const put = (mark: Marked, side: Side, more: number) => {
    tags.set(mark.id, { side, more });
    boxes.set(mark.id, boxOf(mark, side, more));
  };
  for (const mark of ranked) {
    const more = mark.id === chosenId ? Math.min(1, mark.moreWidthPx.length) : 0;
    const clear = SIDES.find((side) => isClear(mark.id, boxOf(mark, side, more)));
    put(mark, clear ?? leastCovered(mark, more), more);
  }
  const most = Math.max(0, ...marks.map(({ moreWidthPx }) => moreWidthPx.length));
  for (let more = 1; more <= most; more++)
    for (const mark of ranked.filter(({ moreWidthPx }) => moreWidthPx.length >= more)) {
      const side = ABOVE.find((one) => isClear(mark.id, boxOf(mark, one, more)));
      if (side && (tags.get(mark.id)?.more ?? 0) < more) put(mark, side, more);
    }
  return tags;
}

/** What marks and their tags cover. */
export function boxesOf(marks: readonly Marked[], tags: ReadonlyMap<string, Tag>): Box[] {
  return marks.flatMap((mark) => {
    const { x, y, id } = mark;
    const place = { left: x - PLACE_PX, right: x + PLACE_PX, top: y - PLACE_PX, bottom: y + PLACE_PX };
    const tag = tags.get(id);
    return tag ? [place, boxOf(mark, tag.side, tag.more)] : [place];
  });
}

function boxOf({ x, y, fixedWidthPx, moreWidthPx }: Marked, side: Side, more: number): Box {
  const width = moreWidthPx.slice(0, more).reduce((sum, px) => sum + px, NUMBER_PX + fixedWidthPx);
  const left = side.startsWith('right') ? x + REACH_PX.x : x - REACH_PX.x - width;
  const top = side.endsWith('above') ? y - REACH_PX.y - HEIGHT_PX : y + REACH_PX.y;
  return { left, right: left + width, top, bottom: top + HEIGHT_PX };
}
