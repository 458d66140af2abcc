import type { Values } from '../field.ts';
import { choice, number } from '../field.ts';
import { along, NOWHERE, trench } from './shape.ts';

/** One wheel path worn into the ground, along the direction of travel. A pair is two ruts with their own depths. */
export const rutFields = {
  centreYM: number(
    'Centre, left of the line',
    'length',
    -6,
    6,
    'Tape from the main line to the middle of the rut; left is positive.',
  ),
  widthM: number('Width', 'size', 0.1, 2, 'Tape across the rut from shoulder to shoulder.'),
  depthM: number('Depth', 'size', 0.01, 1.5, 'Straight edge across the shoulders, tape down to the bottom.'),
  fromM: number(
    'Starts',
    'length',
    -100,
    100,
    'Tape along the line from the pin; behind the pin is negative.',
  ),
  toM: number('Ends', 'length', -100, 100, 'Tape along the line from the pin.'),
  runM: number(
    'Run-in and run-out',
    'length',
    0,
    10,
    'Length over which the rut fades to nothing at each end.',
  ),
  section: choice('Section', ['U', 'V'], 'U: flat bottom and steep walls. V: walls that meet.'),
};

export type Rut = { readonly kind: 'rut' } & Values<typeof rutFields>;

/** Height above the undisturbed plane, metres, never positive. */
export function heightM(rut: Rut, x: number, y: number): number {
  const floor = rut.section === 'U' ? 0.5 : 0;
  return -rut.depthM * along(x, rut.fromM, rut.toM, rut.runM) * trench(y - rut.centreYM, rut.widthM, floor);
}

/** Where along a line at `y` it changes the ground, metres. */
export function reachM(rut: Rut, y: number): readonly [number, number] {
  return Math.abs(y - rut.centreYM) < rut.widthM / 2 ? [rut.fromM, rut.toM] : NOWHERE;
}
