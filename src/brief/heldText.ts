import { heldOf } from '../terrain/heldGrip.ts';
import type { Surface } from '../terrain/surface.ts';
import { written } from '../units.ts';
import { say } from '../words/words.ts';

/** What is held of a surface, beside what tables print; empty where nothing is. */
export function heldText(surface: Surface): string {
  const held = heldOf(surface);
  return held === null
    ? ''
    : say.heldGrip.held(written(held.peak.toFixed(2)), written(held.printed.toFixed(2)));
}

/** The same as a sentence that names the ground. */
export function heldSentence(surface: Surface): string {
  const held = heldText(surface);
  const { material, condition } = surface;
  return held === '' ? '' : say.heldGrip.ground(say.choice[material], say.choice[condition], held);
}
