import type { ClassificationId, Season } from '../grade/classification.ts';
import { classificationOf, levelName } from '../grade/classification.ts';
import { CRITERIA } from '../grade/criteria.ts';
import type { Graded, Open, Reason } from '../grade/rating.ts';
import type { Need, NeedName, TrackRequirement } from '../grade/requirement.ts';
import { NEEDS, REFERENCE_VALUES } from '../grade/requirement.ts';
import type { Quantity, System } from '../units.ts';
import { shown, steepText } from '../units.ts';
import { say } from '../words/words.ts';

/** What only rain or rough elevations leave open; all else is ground that nobody knows. */
const HALF_KNOWN: readonly Open[] = ['water', 'soft ground', 'rough track slope'];

/** The level as it is said, never easier than it may be: `Medium`, `at least Medium`, `not known, at least Medium`. */
export function gradeWord({ level, open }: Graded, classification: ClassificationId): string {
  const name = levelName(classification, level);
  if (open.length === 0) return name;
  return open.every((one) => HALF_KNOWN.includes(one))
    ? say.grading.atLeast(name)
    : say.grading.notKnownAtLeast(name);
}

/** What sets the level, in a driver's words. */
export function reasonText(reason: Reason | null, classification: ClassificationId, system: System): string {
  if (reason === null) return say.grading.easiest;
  switch (reason.kind) {
    case 'size': {
      const { quantity, harder, limits } = CRITERIA[reason.measure];
      const below = limits[classification].lastIndexOf(reason.limit) + 1;
      const compared = harder === 'more' ? say.grading.sizeMore : say.grading.sizeLess;
      return compared(
        say.grading.measure[reason.measure],
        sizeText(reason.value, quantity, system),
        levelName(classification, below),
        sizeText(reason.limit, quantity, system),
      );
    }
    case 'ground':
      return say.grading.ground(say.choice[reason.material], say.choice[reason.condition]);
    case 'soft ground':
      return say.grading.softGround;
    case 'vehicle': {
      const { vehicle, gear } = reason.trial;
      return say.grading.vehicle(
        say.grading.reference[vehicle],
        say.grading.gear[gear],
        say.verdict[reason.word],
        reason.cause,
      );
    }
  }
}

/** Why it may be harder; empty where it may not. */
export function openGradeText({ open }: Graded): string {
  return open.length === 0
    ? ''
    : say.grading.mayBeHarder(open.map((one) => say.grading.open[one]).join('; '));
}

/** Who published the classification, as it is named beside a grade. */
export function sourceText(classification: ClassificationId): string {
  const { title, organisation, year } = classificationOf(classification).source;
  return say.grading.source(title, organisation, year === null ? '' : say.grading.year(year));
}

/** A grade with what it is worth knowing it by: `at least Medium (South African grades, wet)`. */
export function gradeLine(graded: Graded, classification: ClassificationId, season: Season): string {
  return say.grading.line(
    gradeWord(graded, classification),
    say.grading.classifications[classification],
    say.grading.seasons[season],
  );
}

/** A size that grades are told by; its angles are slopes. */
export function sizeText(value: number, quantity: Quantity, system: System): string {
  return quantity === 'angle' ? steepText(value) : shown(value, quantity, system);
}

/** The value of one need as it is read off a vehicle; angles as the three that the reference would have. */
export function needValue(name: NeedName, value: number, system: System): string {
  switch (name) {
    case 'angles': {
      const { approachRad, rampoverRad, departureRad } = REFERENCE_VALUES;
      return [approachRad, rampoverRad, departureRad]
        .map((angle) => shown(angle + value, 'angle', system).replace(/[.,]0(?=°)/, ''))
        .join(' / ');
    }
    case 'clearance':
    case 'tyre':
    case 'wading':
      return shown(value, 'size', system);
    case 'trackWidth':
    case 'width':
      return shown(value, 'length', system);
  }
}

/** One need in a table. */
export function needText(name: NeedName, need: Need, system: System): string {
  if (!need.found) return say.grading.noneFound;
  const value = needValue(name, need.value, system);
  if (!need.atEnd) return value;
  return name === 'trackWidth' || name === 'width'
    ? say.grading.anyUpTo(value)
    : say.grading.anyDownTo(value);
}

/** All that a vehicle must have, in one line; what any vehicle has is left out. `nameOf` names an obstacle. */
export function requirementText(
  { needs, rung, stops, notKnown }: TrackRequirement,
  nameOf: (obstacleId: string) => string,
  system: System,
): string {
  const told =
    needs === null
      ? []
      : NEEDS.flatMap((name) => {
          const need = needs[name];
          if (!need.found || need.atEnd) return [];
          return [say.grading.needShort[name](needValue(name, need.value, system))];
        });
  const aids = rung === null ? [] : [rungName(rung)];
  const sentences = [
    needs === null ? '' : say.grading.takes([...aids, ...told].join(', ')),
    stops.length === 0 ? '' : say.grading.stops(stops.map(nameOf).join(', ')),
    notKnown.length === 0 ? '' : say.grading.leftOut(notKnown.map(nameOf).join(', ')),
  ];
  return sentences.filter(Boolean).join(' ');
}

/** A rung of the reference as it is shown. */
export function rungName(rung: string): string {
  return (say.rung as Readonly<Record<string, string>>)[rung] ?? rung;
}
