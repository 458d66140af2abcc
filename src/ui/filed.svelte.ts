import type { Conflict } from '../archive/conflict.ts';
import type { Taken } from '../archive/gradedStore.ts';
import type { GradedTrack, Outcome } from '../archive/gradedTrack.ts';
import { withOutcome } from '../archive/filing.ts';
import type { Trip } from '../archive/trip.ts';
import { say } from '../words/words.ts';
import { editTrack, takeTrack, trackOfTrip, watchArchive } from '../workers/archive.ts';
import { authorNow } from './author.ts';
import { tell } from './tell.ts';
import { open } from './trip.svelte.ts';

/** The graded track that the trip on the desk was taken out of or filed into, and what stands open there. */
class Filed {
  #taken = $state.raw<{ readonly tripId: string; readonly taken: Taken } | null>(null);
  #asked = 0;
  #watching = false;

  /** Null where the trip is in no graded track, or that is not known yet. */
  get graded(): GradedTrack | null {
    return this.#taken?.tripId === open.now.id ? this.#taken.taken.graded : null;
  }

  conflictsAt(obstacleId: string): readonly Conflict[] {
    if (this.graded === null) return [];
    return this.#taken?.taken.conflicts.filter(({ spot }) => spot.obstacleId === obstacleId) ?? [];
  }

  /** Looks up where a trip was filed. */
  async look(tripId: string): Promise<void> {
    this.#watch();
    const asked = ++this.#asked;
    const { value: trackId } = await trackOfTrip(tripId);
    const taken = trackId === null ? null : (await takeTrack(trackId)).value;
    if (asked === this.#asked) this.#taken = taken && { tripId, taken };
  }

  /** Notes what a vehicle did; false where it could not be kept, which is then said. */
  async note(obstacleId: string, outcome: Outcome): Promise<boolean> {
    return this.#edit((graded) => withOutcome(graded, obstacleId, outcome));
  }

  /** Puts another in the place of an outcome, or nothing. */
  async correct(obstacleId: string, outcomeId: string, next: Outcome | null): Promise<boolean> {
    const corrected = (outcomes: readonly Outcome[]) =>
      outcomes.flatMap((one) => (one.id === outcomeId ? (next ?? []) : one));
    return this.#edit((graded) => ({
      ...graded,
      surveyed: graded.surveyed.map((one) =>
        one.obstacle.id === obstacleId ? { ...one, outcomes: corrected(one.outcomes) } : one,
      ),
    }));
  }

  async #edit(change: (graded: GradedTrack) => GradedTrack): Promise<boolean> {
    const held = this.#taken;
    if (held === null) return false;
    const problem = await editTrack(change(held.taken.graded), held.taken.heads, authorNow());
    if (problem !== null) tell(say.outcomes.head, [problem]);
    await this.look(held.tripId);
    return problem === null;
  }

  #watch(): void {
    if (this.#watching) return;
    this.#watching = true;
    watchArchive(() => void this.look(open.now.id));
  }
}

/** The trip as it goes on paper: what somebody must choose first is said at its obstacle. */
export function withOpenChoices(trip: Trip): Trip {
  const obstacles = trip.obstacles.map((obstacle) => {
    const count = filed.conflictsAt(obstacle.id).length;
    if (count === 0) return obstacle;
    const said = say.gradedTracks.conflicts.atObstacle(count);
    return { ...obstacle, note: obstacle.note === '' ? said : `${said}\n${obstacle.note}` };
  });
  return { ...trip, obstacles };
}

export const filed = new Filed();
