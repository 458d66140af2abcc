import type { Conflict } from '../archive/conflict.ts';
import type { GradedTrack } from '../archive/gradedTrack.ts';
import type { Taken } from '../archive/gradedStore.ts';
import type { Trouble } from '../archive/storeProblem.ts';
import { troubleOf } from '../archive/storeProblem.ts';
import { say } from '../words/words.ts';
import { chooseClaim, editTrack, takeTrack } from '../workers/archive.ts';
import { authorNow } from './author.ts';
import { club } from './club.svelte.ts';
import { tell } from './tell.ts';

/** One graded track as it lies in the archive, read anew whenever it changed. */
export class OpenTrack {
  readonly id: string;
  #taken = $state.raw<Taken | null>(null);
  /** Why it does not come; null while it may. */
  gone = $state.raw<'missing' | 'damaged' | 'unread' | null>(null);
  #asked = 0;

  constructor(id: string) {
    this.id = id;
  }

  get graded(): GradedTrack | null {
    return this.#taken?.graded ?? null;
  }

  get conflicts(): readonly Conflict[] {
    return this.#taken?.conflicts ?? [];
  }

  conflictsAt(obstacleId: string): readonly Conflict[] {
    return this.conflicts.filter(({ spot }) => spot.obstacleId === obstacleId);
  }

  async read(): Promise<void> {
    const asked = ++this.#asked;
    const { value, problems } = await takeTrack(this.id);
    if (asked !== this.#asked) return;
    const trouble = troubleOf(problems);
    this.gone = value === null ? goneBy(trouble) : null;
    this.#taken = value;
    club.opened(this.id, trouble !== 'corrupt');
    tell(value?.graded.name || say.gradedTracks.head, problems);
  }

  /** Keeps what someone made of it; false where that could not be, which is then said. */
  async edit(change: (graded: GradedTrack) => GradedTrack): Promise<boolean> {
    const taken = this.#taken;
    if (taken === null) return false;
    const problem = await editTrack(change(taken.graded), taken.heads, authorNow());
    if (problem !== null) tell(taken.graded.name, [problem]);
    await Promise.all([this.read(), club.refresh()]);
    return problem === null;
  }

  async choose(key: string, claimId: string): Promise<boolean> {
    const problem = await chooseClaim(this.id, key, claimId, authorNow());
    if (problem !== null) tell(this.graded?.name ?? '', [problem]);
    await Promise.all([this.read(), club.refresh()]);
    return problem === null;
  }
}

function goneBy(trouble: Trouble | null): 'missing' | 'damaged' | 'unread' {
  if (trouble === 'missing') return 'missing';
  return trouble === 'corrupt' ? 'damaged' : 'unread';
}
