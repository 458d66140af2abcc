import type { Obstacle } from '../terrain/obstacle.ts';
import type { Photo } from '../terrain/photo.ts';
import { say } from '../words/words.ts';
import { newId } from './identity.ts';
import { notices } from './notice.svelte.ts';
import { changeObstacle, obstacleOf } from './obstacleEdit.ts';
import { addPhotos, photoOf, roomFor } from './photoEdit.ts';
import { open } from './trip.svelte.ts';
import { where } from './where.svelte.ts';

interface Adding {
  readonly obstacleId: string;
  readonly done: number;
  readonly of: number;
}

/** Photos on their way to the obstacle that they were chosen for, whatever is on screen meanwhile. */
class ObstaclePhotos {
  adding = $state.raw<Adding | null>(null);
  #faults = $state.raw<{ readonly obstacleId: string; readonly said: readonly string[] } | null>(null);

  /** What was wrong with the photos that were chosen last, where that was for this obstacle. */
  faultsOf(obstacleId: string): readonly string[] {
    return this.#faults?.obstacleId === obstacleId ? this.#faults.said : [];
  }

  async add(chosenFor: Obstacle, files: readonly File[]): Promise<void> {
    const { id: obstacleId, name } = chosenFor;
    const wanted = files.slice(0, roomFor(chosenFor));
    const made: Photo[] = [];
    const said: string[] = [];
    for (const [done, file] of wanted.entries()) {
      this.adding = { obstacleId, done, of: wanted.length };
      const photo = await photoOf(file, newId());
      if (typeof photo === 'string') said.push(photo);
      else made.push(photo);
    }
    this.adding = null;
    const obstacle = obstacleOf(open.now, obstacleId);
    if (obstacle === undefined) {
      notices.say([say.photos.gone(name), ...said].join(' '));
      return;
    }
    const room = roomFor(obstacle);
    if (wanted.length < files.length || made.length > room)
      said.unshift(say.photos.roomFor(Math.min(wanted.length, room)));
    this.#faults = { obstacleId, said };
    if (made.length > 0)
      open.edit(say.photos.step.add(made.length), (trip) =>
        changeObstacle(trip, obstacleId, (before) => addPhotos(before, made)),
      );
    if (!isOnScreen(obstacleId))
      notices.say(
        [...(made.length > 0 ? [say.photos.addedTo(made.length, obstacle.name)] : []), ...said].join(' '),
      );
    await open.flush();
  }
}

function isOnScreen(obstacleId: string): boolean {
  const { place } = where;
  return place.desk === 'scout' && place.sheet === 'obstacles' && place.obstacleId === obstacleId;
}

export const obstaclePhotos = new ObstaclePhotos();
