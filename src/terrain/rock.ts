import type { Values } from '../field.ts';
import { number } from '../field.ts';
import { cap, ellipseReachM } from './shape.ts';

/** A rock that stays where it is when driven on. */
export const rockFields = {
  xM: number('Along', 'length', -100, 100, 'Tape along the line from the pin to the middle of the rock.'),
  yM: number(
    'Across, left of the line',
    'length',
    -6,
    6,
    'Tape from the main line to the middle of the rock; left is positive.',
  ),
  heightM: number('Height', 'size', 0.03, 1.5, 'Tape from the ground beside it to its top.'),
  lengthM: number('Length', 'length', 0.1, 5, 'Tape along the line.'),
  widthM: number('Width', 'length', 0.1, 5, 'Tape across the line.'),
};

export type Rock = { readonly kind: 'rock' } & Values<typeof rockFields>;

export function heightM(rock: Rock, x: number, y: number): number {
  return rock.heightM * cap(x - rock.xM, y - rock.yM, rock.lengthM, rock.widthM);
}

export function reachM(rock: Rock, y: number): readonly [number, number] {
  return ellipseReachM(y, rock.xM, rock.yM, rock.lengthM, rock.widthM);
}
