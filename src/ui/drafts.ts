/** What stands in a box that is not (yet) a value the trip could take. */
export interface Draft {
  readonly text: string;
  readonly fault: string;
  /** The trip's value (SI) that the draft stands over. Where that changes by other means, the draft has had its day. */
  readonly over: number | null;
}

const KEY = 'rutline.drafts';

/** Drafts of a trip from before the page was closed. */
export function draftsOf(tripId: string): Map<string, Draft> {
  try {
    const kept = JSON.parse(localStorage.getItem(KEY) ?? 'null') as {
      tripId: string;
      drafts: [string, Draft][];
    } | null;
    return new Map(kept?.tripId === tripId ? kept.drafts : []);
  } catch {
    return new Map();
  }
}

/** A device that keeps nothing still shows the drafts until the page is closed. */
export function keepDrafts(tripId: string, drafts: ReadonlyMap<string, Draft>): void {
  try {
    localStorage.setItem(KEY, JSON.stringify({ tripId, drafts: [...drafts] }));
  } catch {
    return;
  }
}
