import type { Direction, Line } from '../terrain/obstacle.ts';
import type { System } from '../units.ts';
import { shown } from '../units.ts';

/** A line as a driver is told it: an offset with how far and to which side, as the convoy comes to it. */
export function lineText(line: Line, direction: Direction, system: System): string {
  switch (line.kind) {
    case 'main':
      return line.name;
    case 'bypass':
      return `${line.name} (bypass)`;
    case 'offset': {
      const leftM = direction === 'reversed' ? -line.offsetM : line.offsetM;
      const side = leftM > 0 ? 'left' : 'right';
      return `${line.name} (${shown(Math.abs(leftM), 'size', system)} to the ${side} of the main line)`;
    }
  }
}

/** The same for a card, where the name of a line does not help: how far to which side, or which way round. */
export function lineCall(line: Line, direction: Direction, system: System): string {
  if (line.kind === 'main') return 'main line';
  if (line.kind === 'bypass') return `bypass: ${line.name}`;
  const leftM = direction === 'reversed' ? -line.offsetM : line.offsetM;
  return `${shown(Math.abs(leftM), 'size', system)} ${leftM > 0 ? 'left' : 'right'} of main line`;
}
