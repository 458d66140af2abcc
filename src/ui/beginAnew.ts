import { say } from '../words/words.ts';
import { drawing } from './drawing.svelte.ts';
import { notices } from './notice.svelte.ts';
import { obstaclePhotos } from './obstaclePhotos.svelte.ts';
import { photoPins } from './photoPins.svelte.ts';
import { open } from './trip.svelte.ts';

/**
 * Whether the page may begin anew: all that there is to store is stored by then. Where something would be lost, it is said
 * what is to be done first.
 */
export async function mayBeginAnew(): Promise<boolean> {
  await open.flush();
  const first = hindrance();
  if (first !== null) notices.say(first);
  return first === null;
}

function hindrance(): string | null {
  if (open.keeping.state === 'failed') return say.header.storeFirst;
  if (obstaclePhotos.adding !== null) return say.header.readFirst;
  if (photoPins.isWaiting) return say.header.photosFirst;
  if (drawing.wouldBeLost) return say.header.drawFirst;
  return null;
}
