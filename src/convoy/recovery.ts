import { G_MPS2 } from '../traverse/gravity.ts';
import { knownSlope } from '../terrain/ground.ts';
import type { RungVerdict } from '../grade/verdict.ts';
import type { Direction, Line } from '../terrain/obstacle.ts';
import { stretchOf } from '../terrain/obstacle.ts';
import type { Surface } from '../terrain/surface.ts';
import { gripOf } from '../terrain/surface.ts';
import type { VehicleValues } from '../vehicle/specs.ts';
import type { Vehicle } from '../vehicle/vehicle.ts';
import { totalMassKg } from '../vehicle/vehicle.ts';
import type { Cell, Place } from './matrix.ts';
import { passesUnaided } from './matrix.ts';
import type { Bedding, Tackle } from './pull.ts';
import { fieldPullN, winchTackle } from './pull.ts';
import { say } from '../words/words.ts';

/** One vehicle that could give the pull, and how; its own winch is the stuck vehicle's. */
export interface Offer {
  readonly vehicleId: string;
  readonly means: 'winch' | 'tow' | 'own winch';
  /** For a winch. */
  readonly tackle: Tackle | null;
  /** What must be seen to first, as sentences; empty where nothing stands out. */
  readonly cautions: readonly string[];
}

/** Help for one vehicle that needs a pull at one place. */
export interface Recovery {
  /** The greater of the field method with its reserve and what traction lacks, newtons. */
  readonly pullN: number;
  /** Winches first, the own one last, then by the fewest cautions. */
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

/**
 * Help on one line of a place; null where the verdict there asks for no pull. Whoever pulls forward stands beyond the
 * obstacle: only those of the convoy are asked that get past it by themselves, as `cells`, the row of the place, say.
 */
export function recoveryOn(
  place: Place,
  line: Line,
  direction: Direction,
  stuck: Vehicle,
  { word, pullN }: RungVerdict,
  convoy: readonly Vehicle[],
  cells: readonly Cell[],
): Recovery | null {
  if (word !== 'needs a pull') return null;
  const obstacle = { ...place.obstacle, stretch: stretchOf(place.obstacle, line) };
  const past = new Set(cells.filter(passesUnaided).map(({ vehicleId }) => vehicleId));
  const through = convoy.filter(({ id }) => past.has(id));
  const behind = new Set(convoy.slice(convoy.findIndex(({ id }) => id === stuck.id) + 1));
  return recoveryAt({ ...place, obstacle }, direction, stuck, pullN, through, behind);
}

/**
 * Who of `others` can pull `stuck` forward at a place, how, and what to beware of. `lackN` is what traction lacks; those
 * `behind` must come past first.
 */
export function recoveryAt(
  place: Place,
  direction: Direction,
  stuck: Vehicle,
  lackN: number,
  others: readonly Vehicle[],
  behind: ReadonlySet<Vehicle> = new Set(),
): Recovery {
  const { stretch } = place.obstacle;
  const slope = knownSlope(stretch, place.trackSlope);
  const slopeRad = (slope?.slopeRad ?? 0) * (direction === 'reversed' ? -1 : 1);
  const weightN = totalMassKg(stuck.values) * G_MPS2;
  const field = fieldPullN({ weightN, bedding: beddingOf(stretch.surface), seized: 'none', slopeRad });
  const pullN = Math.max(field.withReserveN, lackN);
  const grip = gripOf(stretch.surface).peak.low;

  const offers = [
    ...others
      .filter((other) => other.id !== stuck.id)
      .flatMap((other) =>
        offersOf(other, stuck, pullN, grip, slopeRad, stretch.lengthM).map((offer) =>
          behind.has(other)
            ? { ...offer, cautions: [say.recovery.behind(other.name), ...offer.cautions] }
            : offer,
        ),
      ),
    ...ownOffer(stuck, pullN, stretch.lengthM),
  ].sort((a, b) => MEANS.indexOf(a.means) - MEANS.indexOf(b.means) || a.cautions.length - b.cautions.length);
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

const MEANS: readonly Offer['means'][] = ['winch', 'tow', 'own winch'];

/** The stuck vehicle's own winch, where somebody finds it an anchor. */
function ownOffer({ id, values }: Vehicle, pullN: number, lengthM: number): Offer[] {
  const tackle = winchTackle(pullN, values.winchN);
  if (tackle === null) return [];
  const cautions = [say.recovery.anchorAhead, ...ropeCautions(values, tackle, lengthM)];
  return [{ vehicleId: id, means: 'own winch', tackle, cautions }];
}

function ropeCautions({ ropeM }: VehicleValues, { parts }: Tackle, lengthM: number): string[] {
  return lengthM * parts > ropeM ? [say.recovery.ropeShort(Math.round(ropeM), parts)] : [];
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
    const cautions = ropeCautions(values, tackle, lengthM);
    if (pullN > holdsN) cautions.unshift(say.recovery.dragged(other.name));
    offers.push({ vehicleId: other.id, means: 'winch', tackle, cautions });
  }
  if (values.straps && values.rearPointN >= pullN && holdsN >= pullN) {
    const cautions =
      totalMassKg(values) < totalMassKg(stuck.values) ? [say.recovery.lighter(other.name)] : [];
    offers.push({ vehicleId: other.id, means: 'tow', tackle: null, cautions });
  }
  return offers;
}
