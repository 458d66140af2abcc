import type { KnownSlope } from '../terrain/ground.ts';
import type { Stretch } from '../terrain/obstacle.ts';
import type { System } from '../units.ts';
import { shown, slopeText } from '../units.ts';
import { featureWords } from './featureText.ts';

/** Length, ground, slope, camber and room of a stretch, with its sides and slope as they stand in it. */
export function groundText(stretch: Stretch, slope: KnownSlope | null, system: System): string {
  const { surface, corridor, plane, lengthM } = stretch;
  const camber =
    plane.camberRad === null
      ? 'camber not known'
      : plane.camberRad === 0
        ? 'no camber'
        : `${shown(Math.abs(plane.camberRad), 'angle', system)} camber, ${plane.camberRad > 0 ? 'left' : 'right'} side high`;
  const climbs =
    slope === null
      ? 'slope not known'
      : `${slopeText(slope.slopeRad)}${slope.from === 'track' ? ' by the track' : ''}`;
  return `${shown(lengthM, 'length', system)} of ${surface.condition} ${surface.material}; ${climbs}; ${camber}; room ${shown(corridor.leftM, 'length', system)} left (${corridor.leftBound}), ${shown(corridor.rightM, 'length', system)} right (${corridor.rightBound}), ${shown(corridor.headroomM, 'length', system)} above`;
}

/** The shapes of a stretch; like ones are told once, with how many there are. */
export function shapesText({ features }: Stretch, system: System): string {
  const words = features.map((feature) => featureWords(feature, system));
  const times = (word: string) => words.filter((other) => other === word).length;
  return [...new Set(words)].map((word) => (times(word) > 1 ? `${times(word)} × ${word}` : word)).join('; ');
}
