import type { GradedTrack } from '../../../src/archive/gradedTrack.ts';
import type { Track } from '../../../src/route/track.ts';
import type { Obstacle } from '../../../src/terrain/obstacle.ts';
import { PRESETS, stretchFrom } from '../../../src/terrain/preset.ts';

const POINTS = 300;
const OBSTACLES = 10;
const STEP_M = 20;

/** An invented track of a club: 6 km with ten obstacles, each measured once; spread over nine degrees either way. */
export function trackNumbered(number: number): GradedTrack {
  const lng = 10 + ((number * 2654435761) % 9000) / 1000;
  const lat = 40 + ((number * 40503) % 9000) / 1000;
  const id = `track-${number}`;
  return {
    id,
    name: `Invented track ${number}`,
    area: `Area ${number % 50}`,
    note: '',
    track: recorded(id, lng, lat),
    waypoints: [],
    surveyed: Array.from({ length: OBSTACLES }, (_, k) => {
      const obstacle = obstacleNumbered(id, number, k, lng, lat);
      const { stretch } = obstacle;
      return {
        obstacle,
        visits: [{ id: `${id}-visit-${k}`, atMs: 1.6e12 + number * 1e6, by: 'bench', stretch, note: '' }],
        outcomes: [],
      };
    }),
  };
}

function recorded(name: string, lng: number, lat: number): Track {
  const column = (of: (i: number) => number) => Float64Array.from({ length: POINTS }, (_, i) => of(i));
  return {
    name,
    description: '',
    kind: 'track',
    length: POINTS,
    lng: column((i) => lng + i * 0.0002),
    lat: column((i) => lat + Math.sin(i / 20) * 0.002),
    elevationM: column((i) => 600 + 40 * Math.sin(i / 30)),
    timeS: column(() => NaN),
    distanceM: column((i) => i * STEP_M),
    segmentStart: new Uint32Array([0]),
    model: null,
  };
}

function obstacleNumbered(id: string, number: number, k: number, lng: number, lat: number): Obstacle {
  const preset = PRESETS[(number + k) % PRESETS.length];
  const i = 25 * k;
  return {
    id: `${id}-${k}`,
    name: `${preset.name} ${k + 1}`,
    preset: preset.name,
    lng: lng + i * 0.0002,
    lat: lat + Math.sin(i / 20) * 0.002,
    stationM: i * STEP_M,
    stretch: stretchFrom(preset, { slopeRad: 0.05 + 0.02 * ((number + k) % 9) }),
    lines: [{ id: 'main', kind: 'main', name: 'main line', offsetM: 0 }],
    note: '',
    photos: [],
  };
}
