import { camberAt } from './camber.ts';
import type { Track, TrackModel } from './track.ts';

/**
 * Metres of track over which recorded elevation is smoothed, unless asked otherwise. Two ends that are each off by sigma
 * put the slope off by sqrt(2) sigma / B: half the baseline doubles the error, and no pitch much shorter than the
 * baseline can be seen. With the sigma below, 60 m gives +-7 % (2 standard deviations) at best.
 */
export const BASELINE_M = 60;

/**
 * By how much the recorded elevations within one baseline are off against each other, standard deviation. Satellite heights
 * drift together, so it is less than their published error. Assumed, no source; the scatter that the recording
 * itself shows is added.
 */
export const RECORDED_SIGMA_M = 1.5;

/** Steps of a model over which its elevation is smoothed: what lies between two nodes of it nobody knows. */
const BASELINE_NODES = 2;

/** Its least baseline, however fine it is: positions along the track are only known to some metres. */
const LEAST_BASELINE_M = 20;

/**
 * By how much recorded positions within one baseline are off against each other to the side, standard deviation: on a
 * hillside a model is then read off too high or too low. Assumed, no source.
 */
const ACROSS_SIGMA_M = 2;

/** Whose elevations they are. */
export type HeightsFrom = 'recorded' | 'model';

/** Elevations along a track, and how well they are known. */
export interface Heights {
  readonly from: HeightsFrom;
  /** One a point, NaN where unknown. */
  readonly elevationM: Float64Array;
  /** A pitch much shorter than this cannot be seen. */
  readonly baselineM: number;
  /** How far elevations within a baseline are off against each other, one standard deviation; on level ground. */
  readonly sigmaM: number;
  /** The same at a station. */
  readonly sigmaAt: (stationM: number) => number;
  /** Whether short holes between two known points count as an even slope. */
  readonly bridged: boolean;
}

/** Whose elevations the slopes of a track are read off. */
export function chosenHeights({ model }: Track): HeightsFrom {
  return model?.isUsed ? 'model' : 'recorded';
}

/** Whose elevations there are beside those, to check by; null where there are none. */
export function otherHeights(track: Track): HeightsFrom | null {
  if (track.model === null) return null;
  return chosenHeights(track) === 'model' ? 'recorded' : 'model';
}

/** Elevations of a track: those that its slopes are read off, unless others are asked for. */
export function heightsOf(track: Track, from: HeightsFrom = chosenHeights(track)): Heights {
  const { model } = track;
  if (from === 'model' && model !== null) return modelHeights(track, model);
  return {
    from: 'recorded',
    elevationM: track.elevationM,
    baselineM: BASELINE_M,
    sigmaM: RECORDED_SIGMA_M,
    sigmaAt: () => RECORDED_SIGMA_M,
    bridged: true,
  };
}

/** A hole in a model is a cliff as often as not, and is never bridged. */
function modelHeights(track: Track, model: TrackModel): Heights {
  const { elevationM, errorM } = model;
  const sigmaAt = (stationM: number) => {
    const { camberRad } = camberAt(track, stationM) ?? { camberRad: 0 };
    return Math.hypot(errorM, ACROSS_SIGMA_M * Math.tan(camberRad));
  };
  return {
    from: 'model',
    elevationM,
    baselineM: modelBaselineM(model),
    sigmaM: errorM,
    sigmaAt,
    bridged: false,
  };
}

export function modelBaselineM({ nodeM }: TrackModel): number {
  return Math.max(LEAST_BASELINE_M, BASELINE_NODES * nodeM);
}
