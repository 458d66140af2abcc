/** What became of a vehicle at an obstacle, from best to worst. */
export const OUTCOME_WORDS = ['went', 'went with a run', 'was pulled', 'turned back'] as const;

export type OutcomeWord = (typeof OUTCOME_WORDS)[number];
