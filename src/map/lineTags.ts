import type { Box } from './box.ts';
import { isWithin, overlap } from './box.ts';

/** Pixels from the top left of the map. */
export interface Spot {
  readonly x: number;
  readonly y: number;
}

/** A line that wants its words beside it. */
export interface Tagged {
  readonly id: string;
  /** As drawn; the pieces of a line with a gap. */
  readonly ways: readonly (readonly Spot[])[];
  /** On which sides of the way its words may stand, in order of preference: 1 to the left of it, -1 to the right. */
  readonly sides: readonly (1 | -1)[];
  readonly widthPx: number;
  readonly heightPx: number;
}

/** Where the words of a line stand: the top left of their box, and the leader from the line to it. */
export interface LineTag {
  readonly box: Box;
  readonly from: Spot;
  readonly to: Spot;
}

/** Words are tried at these shares of a way, the middle last, where the pin is. */
const SHARES = [0.25, 0.75, 0.1, 0.9, 0.35, 0.65, 0, 1, 0.45, 0.55, 0.5];
/** A box keeps this far off its line; where that is taken, farther. */
const CLEAR_PX = [10, 34, 62];

/** Lines are kept clear of at each of so many steps along them. */
const STEPS = 16;

/**
 * Words beside lines that cover neither each other nor what is `taken`, within `frame`, and no line where that can be
 * helped; a line for which there is no room has none. Earlier lines choose first.
 */
export function lineTagsOf(
  lines: readonly Tagged[],
  taken: readonly Box[],
  frame: Box,
): ReadonlyMap<string, LineTag> {
  const tags = new Map<string, LineTag>();
  const covered = [...taken];
  const drawn = lines.flatMap(({ ways }) =>
    ways.flatMap((way) => Array.from({ length: STEPS + 1 }, (_, i) => alongAt(way, i / STEPS))),
  );
  for (const line of lines) {
    const tag = tagOf(line, covered, drawn, frame);
    if (!tag) continue;
    tags.set(line.id, tag);
    covered.push(tag.box);
  }
  return tags;
}

function tagOf(
  line: Tagged,
  covered: readonly Box[],
  drawn: readonly Spot[],
  frame: Box,
): LineTag | undefined {
  const spots = line.ways.flatMap((way) => SHARES.map((share) => alongAt(way, share)));
  const seen = spots.filter(({ x, y }) => isWithin(boxAt({ x, y }), frame));
  let second: LineTag | undefined;
  for (const clearPx of CLEAR_PX)
    for (const side of line.sides)
      for (const spot of seen) {
        const tag = tagAt(spot, side, clearPx, line);
        if (!isWithin(tag.box, frame) || covered.some((box) => overlap(box, tag.box))) continue;
        if (!drawn.some((at) => isWithin(boxAt(at), tag.box))) return tag;
        second ??= tag;
      }
  return second;
}

function boxAt({ x, y }: Spot): Box {
  return { left: x, right: x, top: y, bottom: y };
}

/** A spot of a way and the unit vector to its left. */
interface Along extends Spot {
  readonly leftX: number;
  readonly leftY: number;
}

/** The box lies wholly on one side of the tangent to the way, `clearPx` from it. */
function tagAt(
  { x, y, leftX, leftY }: Along,
  side: 1 | -1,
  clearPx: number,
  { widthPx, heightPx }: Tagged,
): LineTag {
  const [outX, outY] = [leftX * side, leftY * side];
  const away = clearPx + (Math.abs(outX) * widthPx + Math.abs(outY) * heightPx) / 2;
  const left = x + outX * away - widthPx / 2;
  const top = y + outY * away - heightPx / 2;
  const box = { left, right: left + widthPx, top, bottom: top + heightPx };
  const to = {
    x: Math.min(Math.max(x, box.left), box.right),
    y: Math.min(Math.max(y, box.top), box.bottom),
  };
  return { box, from: { x, y }, to };
}

/** The spot at a share of the length of a way; y runs down the page. */
function alongAt(way: readonly Spot[], share: number): Along {
  const lengths = way.slice(1).map(({ x, y }, i) => Math.hypot(x - way[i].x, y - way[i].y));
  let left = share * lengths.reduce((sum, length) => sum + length, 0);
  let i = 0;
  while (i < lengths.length - 1 && left > lengths[i]) left -= lengths[i++];
  const [a, b, length] = [way[i], way[i + 1], lengths[i] || 1];
  const [dx, dy] = [(b.x - a.x) / length, (b.y - a.y) / length];
  return { x: a.x + dx * left, y: a.y + dy * left, leftX: dy, leftY: -dx };
}
