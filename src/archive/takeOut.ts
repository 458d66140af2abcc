/** Which graded track a trip was taken out of, and as it stood when. */
export interface TakeOut {
  readonly tripId: string;
  readonly trackId: string;
  /** State of the graded track then, as `headsOf` gives it: what is filed back is compared with that, not with today. */
  readonly heads: readonly string[];
}
