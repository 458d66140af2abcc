import type { Range } from './surface.ts';

/** Which way a size makes an obstacle harder: away from zero, or towards it. Null: it may work either way. */
export type Harder = 'more' | 'less' | null;

/** Decides what each value that is only known within ± is taken to be. `path` names the value within its stretch. */
export interface Take {
  measured(path: string, value: number, plusMinus: number, harder: Harder): number;
  printed(path: string, range: Range, harder: Harder): number;
}

/** The values as they were entered, and the usual ones of the tables. */
export const AS_ENTERED: Take = {
  measured: (_path, value) => value,
  printed: (_path, range) => range.usual,
};

/** Every value at the hard end of its range; one that may work either way as entered. */
export const AT_WORST = atEnd('more', 'less');

/** Every value at the easy end. */
export const AT_BEST = atEnd('less', 'more');

function atEnd(up: Harder, down: Harder): Take {
  return {
    measured: (_path, value, plusMinus, harder) => {
      if (harder === null) return value;
      return awayFromZero(value, harder === up ? plusMinus : -plusMinus);
    },
    printed: (_path, range, harder) => {
      if (harder === up) return range.high;
      return harder === down ? range.low : range.usual;
    },
  };
}

/** Grows (or with a negative span shrinks, never past zero) a value, keeping its sign. */
function awayFromZero(value: number, span: number): number {
  return value < 0 ? Math.min(0, value - span) : Math.max(0, value + span);
}
