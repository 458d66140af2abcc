/**
 * A recorded route: parallel arrays, one entry a point, `length` of them.
 * Positions are WGS 84 degrees as in GPX and GeoJSON, longitude [-180, 180), latitude [-90, 90].
 */
export interface Track {
  readonly name: string;
  readonly description: string;
  /** `track` was recorded, `route` was planned. */
  readonly kind: 'track' | 'route';
  readonly length: number;
  readonly lng: Float64Array;
  readonly lat: Float64Array;
  /** Height above mean sea level as recorded; NaN where the file gives none. */
  readonly elevationM: Float64Array;
  /** Seconds since 1970-01-01T00:00:00Z; NaN where the file gives none. */
  readonly timeS: Float64Array;
  /** Ellipsoidal distance from the first point, never falling; the link over a gap adds nothing. */
  readonly distanceM: Float64Array;
  /** Index of the first point of each recorded segment, ascending from 0. A gap lies before every one but the first. */
  readonly segmentStart: Uint32Array;
  /** Null until an elevation model is laid along it. */
  readonly model: TrackModel | null;
}

/**
 * What an elevation model says along a track, one entry a point, kept with the track so that the model's file is needed no
 * more. The recorded elevations stay beside it as they are.
 */
export interface TrackModel {
  /** Name of the file that it was read off. */
  readonly name: string;
  /** Distance between its nodes, eastward or northward, whichever is more. */
  readonly nodeM: number;
  /** How far its heights are off, one standard deviation, as its publisher states it or as we assume. */
  readonly errorM: number;
  /** NaN where it does not know the ground there and to either side. */
  readonly elevationM: Float64Array;
  /** Cross slope of the hillside, left side high positive; NaN where unknown. */
  readonly camberRad: Float64Array;
  /** Whether slopes are read off it and not off the recording. */
  readonly isUsed: boolean;
}

/** A named place in a recording. */
export interface Waypoint {
  readonly name: string;
  readonly description: string;
  readonly lng: number;
  readonly lat: number;
  /** NaN where unknown. */
  readonly elevationM: number;
}

/** All that a GPX file holds for us. */
export interface Recording {
  readonly name: string;
  readonly tracks: readonly Track[];
  readonly waypoints: readonly Waypoint[];
}
