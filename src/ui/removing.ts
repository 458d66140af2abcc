import type { Shelved } from '../archive/shelved.ts';
import { say } from '../words/words.ts';
import { putTrackBack, removeTrack } from '../workers/archive.ts';
import { club } from './club.svelte.ts';
import { notices } from './notice.svelte.ts';
import { GRADED_TRACKS } from './place.ts';
import { tell } from './tell.ts';
import { where } from './where.svelte.ts';

/** Takes a graded track off this device, and offers to put it back as it was. */
export async function removeWithWayBack({ id, name }: { id: string; name: string }): Promise<void> {
  const { value, problems } = await removeTrack(id);
  if (value === null) return tell(name, problems);
  where.replace(GRADED_TRACKS);
  await club.refresh();
  offerBack(name, value);
}

function offerBack(name: string, removed: Shelved): void {
  const { sheet, unnamed } = say.gradedTracks;
  notices.say(sheet.removed(name || unnamed), {
    name: sheet.putBack,
    run: () => void putBack(name, removed),
  });
}

async function putBack(name: string, removed: Shelved): Promise<void> {
  const problem = await putTrackBack(removed);
  if (problem !== null) {
    tell(name, [problem]);
    return offerBack(name, removed);
  }
  await club.refresh();
}
