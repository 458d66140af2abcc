import type { OpenTo } from '../convoy/openTo.ts';
import { offsetOf } from '../grade/verdict.ts';
import type { Direction, Line } from '../terrain/obstacle.ts';
import type { System } from '../units.ts';
import { shown } from '../units.ts';
import { say } from '../words/words.ts';

/** A line as a driver is told it: an offset with how far and to which side, as the convoy comes to it. */
export function lineText(line: Line, direction: Direction, system: System): string {
  switch (line.kind) {
    case 'main':
      return line.name;
    case 'bypass':
      return say.ground.bypassNamed(line.name);
    case 'offset': {
      const leftM = offsetOf(line, direction);
      const distance = shown(Math.abs(leftM), 'size', system);
      return say.ground.offsetNamed[leftM > 0 ? 'left' : 'right'](line.name, distance);
    }
  }
}

/** The same for a card, where the name of a line does not help: how far to which side, or which way round. */
export function lineCall(line: Line, direction: Direction, system: System): string {
  if (line.kind === 'main') return say.lineKind.main;
  if (line.kind === 'bypass') return say.ground.bypassCall(line.name);
  const leftM = offsetOf(line, direction);
  return say.ground.offsetCall[leftM > 0 ? 'left' : 'right'](shown(Math.abs(leftM), 'size', system));
}

/** The same along a line on the map, where the main line is seen beside it: `left 0.40 m`. */
export function lineTag(line: Line, direction: Direction, system: System): string {
  if (line.kind !== 'offset') return lineCall(line, direction, system);
  const leftM = offsetOf(line, direction);
  return say.ground.offsetTag[leftM > 0 ? 'left' : 'right'](shown(Math.abs(leftM), 'length', system));
}

/** Beyond this many names it is only said how many. */
const NAMES = 2;

/** To whom a line is open: `track widths 1.42–1.52 m`; empty where that is not known. */
export function openText(open: OpenTo | null, system: System): string {
  if (open === null) return '';
  if (open.trackWidthM === null) return say.ground.openToNone;
  const { least, greatest } = open.trackWidthM;
  const [from, to] = [shown(least, 'length', system), shown(greatest, 'length', system)];
  const [number] = from.split(' ');
  const range = from === to ? say.ground.trackWidth(from) : say.ground.trackWidths(number, to);
  if (open.shutTo.length === 0) return range;
  const names = open.shutTo.map(({ name }) => name || say.ground.unnamed);
  return names.length > NAMES ? say.ground.notThose(range, names.length) : say.ground.notFor(range, names);
}
