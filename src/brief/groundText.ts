import type { KnownSlope } from '../terrain/ground.ts';
import type { Stretch } from '../terrain/obstacle.ts';
import type { System } from '../units.ts';
import { shown, slopeText, steepText } from '../units.ts';
import { featureWords } from './featureText.ts';
import { heldText } from './heldText.ts';
import { say } from '../words/words.ts';

/** Length, ground, slope, camber and room of a stretch, with its sides and slope as they stand in it. */
export function groundText(stretch: Stretch, slope: KnownSlope | null, system: System): string {
  const { surface, corridor, plane, lengthM } = stretch;
  const camber =
    plane.camberRad === null
      ? say.ground.camberNotKnown
      : plane.camberRad === 0
        ? say.ground.noCamber
        : say.ground.camber[plane.camberRad > 0 ? 'left' : 'right'](steepText(Math.abs(plane.camberRad)));
  const climbs =
    slope === null
      ? say.ground.slopeNotKnown
      : slope.from === 'track'
        ? say.ground.byTrack(slopeText(slope.slopeRad))
        : slope.from === 'model'
          ? say.ground.byModel(slopeText(slope.slopeRad))
          : slopeText(slope.slopeRad);
  const length = (valueM: number) => shown(valueM, 'length', system);
  const stands = say.ground.surface(
    length(lengthM),
    say.choice[surface.condition],
    say.choice[surface.material],
  );
  const room = say.ground.room(
    length(corridor.leftM),
    say.choice[corridor.leftBound],
    length(corridor.rightM),
    say.choice[corridor.rightBound],
    length(corridor.headroomM),
  );
  return [stands, heldText(surface), climbs, camber, room].filter(Boolean).join('; ');
}

/** The shapes of a stretch; like ones are told once, with how many there are. */
export function shapesText({ features }: Stretch, system: System): string {
  const words = features.map((feature) => featureWords(feature, system));
  const times = (word: string) => words.filter((other) => other === word).length;
  return [...new Set(words)].map((word) => (times(word) > 1 ? `${times(word)} × ${word}` : word)).join('; ');
}
