import fc from 'fast-check';
import type { GradedTrack } from '../../src/archive/gradedTrack.ts';
import { OUTCOME_WORDS } from '../../src/archive/gradedTrack.ts';
import { gradedFrom, gradedRecord } from '../../src/archive/gradedRecord.ts';
import { VERDICT_WORDS } from '../../src/grade/verdict.ts';
import { anyTrip } from './trips.ts';

const anyMoment = fc.integer({ min: 0, max: 4e12 });

/** Any track of a club as it is read back from its record: without a fault, surveyed once or twice, with what vehicles did. */
export function anyGradedTrack(): fc.Arbitrary<GradedTrack> {
  const outcome = fc.record({
    id: fc.uuid(),
    atMs: anyMoment,
    by: fc.string(),
    lineId: fc.string(),
    direction: fc.constantFrom('as recorded' as const, 'reversed' as const),
    rung: fc.string(),
    said: fc.option(fc.constantFrom(...VERDICT_WORDS)),
    did: fc.constantFrom(...OUTCOME_WORDS),
    note: fc.string(),
  });
  const visit = fc.record({ id: fc.uuid(), atMs: anyMoment, by: fc.string(), note: fc.string() });
  return fc
    .record({
      trip: anyTrip(),
      area: fc.string({ unit: 'grapheme' }),
      visits: fc.uniqueArray(visit, { minLength: 8, maxLength: 8, selector: ({ id }) => id }),
      outcomes: fc.uniqueArray(outcome, { minLength: 4, maxLength: 4, selector: ({ id }) => id }),
    })
    .map(({ trip, area, visits, outcomes }) => ({
      id: trip.id,
      name: trip.name,
      area,
      note: trip.note,
      track: trip.track,
      waypoints: trip.waypoints,
      surveyed: trip.obstacles.map((obstacle, i) => ({
        obstacle,
        visits: inTime(visits.slice(2 * i, 2 * i + 1 + (i % 2))).map((one) => ({
          ...one,
          stretch: obstacle.stretch,
        })),
        outcomes: trip.vehicles[0] ? [{ ...outcomes[i], vehicle: trip.vehicles[0] }] : [],
      })),
    }))
    .map((graded) => gradedFrom(gradedRecord(graded)).value!);
}

function inTime<T extends { readonly atMs: number }>(list: readonly T[]): T[] {
  return [...list].sort((a, b) => a.atMs - b.atMs);
}
