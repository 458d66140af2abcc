/** Which graded track a trip was taken out of or filed into, and as it stood when. */
export interface TakeOut {
  readonly tripId: string;
  readonly trackId: string;
  /**
   * The state of the graded track that the trip shows, or showed before it was changed: what is filed is compared with
   * that, not with today. Null where nobody knows.
   */
  readonly heads: readonly string[] | null;
}
