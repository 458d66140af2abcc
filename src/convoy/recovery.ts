import { G_MPS2 } from '../traverse/gravity.ts';
import { knownSlope } from '../terrain/ground.ts';
import type { RungVerdict } from '../grade/verdict.ts';
import type { Direction, Line } from '../terrain/obstacle.ts';
import { stretchOf } from '../terrain/obstacle.ts';
import type { Surface } from '../terrain/surface.ts';
import { gripOf } from '../terrain/surface.ts';
import type { Vehicle } from '../vehicle/vehicle.ts';
import { totalMassKg } from '../vehicle/vehicle.ts';
import type { Place } from './matrix.ts';
import type { Bedding, Tackle } from './pull.ts';
import { fieldPullN, winchTackle } from './pull.ts';
import { say } from '../words/words.ts';

/** One vehicle that could give the pull, and how. */
export interface Offer {
  readonly vehicleId: string;
  readonly means: 'winch' | 'tow';
  /** For a winch. */
  readonly tackle: Tackle | null;
  /** What must be seen to first, as sentences; empty where nothing stands out. */
  readonly cautions: readonly string[];
}

/** Help for one vehicle that needs a pull at one place. */
export interface Recovery {
  /** The greater of the field method with its reserve and what traction lacks, newtons. */
  readonly pullN: number;
  /** Winches first, then by the fewest cautions. */
  readonly offers: readonly Offer[];
  readonly cautions: readonly string[];
}

/** Ground as the winching sheet names it; between two names the one that pulls harder. */
function beddingOf({ material, condition }: Surface): Bedding {
  switch (material) {
    case 'asphalt':
    case 'concrete':
    case 'rock':
    case 'ice':
      return 'hard surface';
    case 'grass':
      return condition === 'dry' ? 'dry grass' : 'soft wet sand';
    case 'sand':
      return condition === 'dry' ? 'loose gravel or dry sand' : 'soft wet sand';
    case 'gravel':
      return 'loose gravel or dry sand';
    case 'earth':
    case 'clay':
    case 'snow':
      return condition === 'dry' ? 'loose gravel or dry sand' : 'light mud';
    case 'mud':
      return 'mud to the rim';
  }
}

/** Help on one line of a place; null where the verdict there asks for no pull. */
export function recoveryOn(
  place: Place,
  line: Line,
  direction: Direction,
  stuck: Vehicle,
  { word, pullN }: RungVerdict,
  others: readonly Vehicle[],
): Recovery | null {
  if (word !== 'needs a pull') return null;
  const obstacle = { ...place.obstacle, stretch: stretchOf(place.obstacle, line) };
  return recoveryAt({ ...place, obstacle }, direction, stuck, pullN, others);
}

/** Who of `others` can pull `stuck` forward at a place, how, and what to beware of. `lackN` is what traction lacks. */
export function recoveryAt(
  place: Place,
  direction: Direction,
  stuck: Vehicle,
  lackN: number,
  others: readonly Vehicle[],
): Recovery {
  const { stretch } = place.obstacle;
  const slope = knownSlope(stretch, place.trackSlope);
  const slopeRad = (slope?.slopeRad ?? 0) * (direction === 'reversed' ? -1 : 1);
  const weightN = totalMassKg(stuck.values) * G_MPS2;
  const field = fieldPullN({ weightN, bedding: beddingOf(stretch.surface), seized: 'none', slopeRad });
  const pullN = Math.max(field.withReserveN, lackN);
  const grip = gripOf(stretch.surface).peak.low;

  const offers = others
    .filter((other) => other.id !== stuck.id)
    .flatMap((other) => offersOf(other, stuck, pullN, grip, slopeRad, stretch.lengthM))
    .sort((a, b) =>
      a.means === b.means ? a.cautions.length - b.cautions.length : a.means === 'winch' ? -1 : 1,
    );
  const cautions: string[] = [];
  if (stuck.values.frontPointN < pullN)
    cautions.push(
      stuck.values.frontPointN === 0
        ? say.recovery.noFrontPoint(stuck.name)
        : say.recovery.beyondFrontPoint(stuck.name),
    );
  if (offers.length === 0) cautions.push(say.recovery.nobody);
  return { pullN, offers, cautions };
}

function offersOf(
  other: Vehicle,
  stuck: Vehicle,
  pullN: number,
  grip: number,
  slopeRad: number,
  lengthM: number,
): Offer[] {
  const { values } = other;
  const weightN = totalMassKg(values) * G_MPS2;
  const holdsN = weightN * Math.max(0, grip * Math.cos(slopeRad) - Math.abs(Math.sin(slopeRad)));
  const offers: Offer[] = [];
  const tackle = winchTackle(pullN, values.winchN);
  if (tackle !== null) {
    const cautions: string[] = [];
    if (pullN > holdsN) cautions.push(say.recovery.dragged(other.name));
    if (lengthM * tackle.parts > values.ropeM)
      cautions.push(say.recovery.ropeShort(Math.round(values.ropeM), tackle.parts));
    offers.push({ vehicleId: other.id, means: 'winch', tackle, cautions });
  }
  if (values.straps && values.rearPointN >= pullN && holdsN >= pullN) {
    const cautions =
      totalMassKg(values) < totalMassKg(stuck.values) ? [say.recovery.lighter(other.name)] : [];
    offers.push({ vehicleId: other.id, means: 'tow', tackle: null, cautions });
  }
  return offers;
}
