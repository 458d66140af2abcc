import type { Values } from '../field.ts';
import { number } from '../field.ts';
import type { Places } from './shape.ts';
import { cap, ellipseReachM } from './shape.ts';
import { say } from '../words/words.ts';

/** A rock that stays where it is when driven on. */
export const rockFields = {
  xM: number(say.terrainFields.rock.xM, 'length', -100, 100),
  yM: number(say.terrainFields.rock.yM, 'length', -6, 6),
  heightM: number(say.terrainFields.rock.heightM, 'size', 0.03, 1.5),
  lengthM: number(say.terrainFields.rock.lengthM, 'length', 0.1, 5),
  widthM: number(say.terrainFields.rock.widthM, 'length', 0.1, 5),
};

export type Rock = { readonly kind: 'rock' } & Values<typeof rockFields>;

export function lay(rock: Rock, { y, fromM, stepM, first, last, heightsM }: Places): void {
  const { xM, heightM, lengthM, widthM } = rock;
  const dy = y - rock.yM;
  for (let i = first; i <= last; i++)
    heightsM[i] = heightM * cap(fromM + i * stepM - xM, dy, lengthM, widthM);
}

export function reachM(rock: Rock, y: number): readonly [number, number] {
  return ellipseReachM(y, rock.xM, rock.yM, rock.lengthM, rock.widthM);
}
