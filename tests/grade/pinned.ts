import type { GradedPlace } from '../../src/grade/rating.ts';
import type { Obstacle, Stretch } from '../../src/terrain/obstacle.ts';
import type { Answers } from '../../src/terrain/preset.ts';
import { presetNamed, stretchFrom } from '../../src/terrain/preset.ts';

/** An obstacle with one line, on any ground. */
export function placeOf(stretch: Stretch, id = 'here'): GradedPlace {
  const obstacle: Obstacle = {
    id,
    name: id,
    preset: 'ledge',
    lng: 0,
    lat: 0,
    stationM: 0,
    stretch,
    lines: [{ id: 'main', kind: 'main', name: 'main', offsetM: 0 }],
    note: '',
    photos: [],
  };
  return { obstacle, trackSlope: null };
}

/** The ground of a preset with some answers, taped; level unless a slope is given. */
export function ground(preset: string, answers: Answers = {}): Stretch {
  return stretchFrom(presetNamed(preset)!, { slopeRad: 0, camberRad: 0, ...answers });
}

/** A plain way without any shape in it, every number taped. */
export function plainWay(slopeRad: number, surface: Stretch['surface']): Stretch {
  return { ...ground('log', { slopeRad }), surface, features: [] };
}
