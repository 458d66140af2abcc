import { COVERAGE, lastAtOrBefore } from './curve.ts';
import { reachM } from './elevation.ts';
import type { Track, TrackModel } from './track.ts';

/** Cross slope of the hillside, left side high positive, of two standard deviations either way. */
export interface Camber {
  readonly camberRad: number;
  readonly plusMinusRad: number;
}

/** At the point of the track before a station; null without a model, and where it does not know. */
export function camberAt(track: Track, stationM: number): Camber | null {
  const i = Math.max(0, lastAtOrBefore(track.distanceM, stationM));
  return track.model === null ? null : camberAtPoint(track.model, i);
}

/** Two heights, one to either side, that are each off by the error of the model. */
function camberAtPoint({ camberRad, nodeM, errorM }: TrackModel, index: number): Camber | null {
  const camber = camberRad[index];
  if (!(Math.abs(camber) < Math.PI / 2)) return null;
  const spread = (COVERAGE * Math.SQRT2 * errorM) / (2 * reachM(nodeM));
  return { camberRad: camber, plusMinusRad: spread * Math.cos(camber) ** 2 };
}

/** A cross slope and where it is. */
export interface CamberThere extends Camber {
  readonly stationM: number;
}

/** The steepest cross slope that the model knows; null where it knows none. */
export function steepestCamber(track: Track): CamberThere | null {
  const { model } = track;
  if (model === null) return null;
  let steepest = -1;
  for (let i = 0; i < track.length; i++) {
    const camber = Math.abs(model.camberRad[i]);
    if (camber > (steepest < 0 ? -1 : Math.abs(model.camberRad[steepest]))) steepest = i;
  }
  const camber = steepest < 0 ? null : camberAtPoint(model, steepest);
  return camber && { ...camber, stationM: track.distanceM[steepest] };
}
