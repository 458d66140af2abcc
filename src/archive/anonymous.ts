import type { GradedTrack } from './gradedTrack.ts';

/** What of people a file of graded tracks carries. */
export interface OfPeople {
  /** Who measured, who noted, who drove. */
  readonly names: boolean;
  readonly photos: boolean;
}

/** The track with no more of people than asked; notes stay, as they are about the place. */
export function withOnly(graded: GradedTrack, { names, photos }: OfPeople): GradedTrack {
  return {
    ...graded,
    surveyed: graded.surveyed.map(({ obstacle, visits, outcomes }) => ({
      obstacle: photos ? obstacle : { ...obstacle, photos: [] },
      visits: names ? visits : visits.map((visit) => ({ ...visit, by: '' })),
      outcomes: names
        ? outcomes
        : outcomes.map((one) => ({ ...one, by: '', vehicle: { ...one.vehicle, driver: '' } })),
    })),
  };
}
