import { wrapLng } from '../../route/ellipsoid.ts';
import type { ForeignPath } from '../filed.ts';
import type { OutPath } from './contents.ts';

/**
 * Pieces of at least two positions that do not cross the antimeridian; both sides keep the crossing (RFC 7946, 3.1.9). A
 * segment of one point is a place that was stood at, and a line needs two: it stands there twice.
 */
export function cutAtAntimeridian({
  lng,
  lat,
  elevationM,
}: Pick<OutPath, 'lng' | 'lat' | 'elevationM'>): ForeignPath[] {
  const heightOf = (i: number) => elevationM?.[i] ?? NaN;
  const pieces: (readonly [number, number, number])[][] = [[[wrapLng(lng[0]), lat[0], heightOf(0)]]];
  for (let i = 1; i < lng.length; i++) {
    const [before, here] = [wrapLng(lng[i - 1]), wrapLng(lng[i])];
    const step = wrapLng(here - before);
    if (Math.abs(here - before) > 180 && step !== 0) {
      const edge = step > 0 ? 180 : -180;
      const share = (edge - before) / step;
      const between = (from: number, to: number) => from + share * (to - from);
      const crossing = between(lat[i - 1], lat[i]);
      const height = between(heightOf(i - 1), heightOf(i));
      pieces[pieces.length - 1].push([edge, crossing, height]);
      pieces.push([[-edge, crossing, height]]);
    }
    pieces[pieces.length - 1].push([here, lat[i], heightOf(i)]);
  }
  return pieces.map((piece) => {
    const points = piece.length === 1 ? [piece[0], piece[0]] : piece;
    return {
      lng: Float64Array.from(points, ([x]) => x),
      lat: Float64Array.from(points, ([, y]) => y),
      elevationM: Float64Array.from(points, ([, , z]) => z),
    };
  });
}
