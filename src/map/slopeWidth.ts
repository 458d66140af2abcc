import type { ExpressionSpecification } from 'maplibre-gl';
import { STEEPNESS } from '../route/steepness.ts';

/** Far and close zoom, and the stroke of the gentlest and the steepest class there. */
const FAR = { zoom: 11, least: 1.5, most: 5 };
const CLOSE = { zoom: 17, least: 4.5, most: 11 };

/** Width of the track's stroke, the wider the steeper, so that colour is not needed to tell; `more` pixels for an edge. */
export function slopeWidth(more: number): ExpressionSpecification {
  const at = ({ least, most }: typeof FAR): ExpressionSpecification => [
    '+',
    least + more,
    ['*', (most - least) / (STEEPNESS.length - 1), ['max', 0, ['get', 'class']]],
  ];
  return ['interpolate', ['linear'], ['zoom'], FAR.zoom, at(FAR), CLOSE.zoom, at(CLOSE)];
}
