import { list, load } from '../archive/store.ts';
import { say } from '../words/words.ts';
import { DEMO_ID, demoTrip, layDemoGround } from './demo.ts';
import { newId } from './identity.ts';
import { incoming } from './incoming.svelte.ts';
import type { Leftover } from './leftover.ts';
import { clearLeftover, joined, leftover, sameButTrack } from './leftover.ts';
import { notices } from './notice.svelte.ts';
import { lastOpen, open } from './trip.svelte.ts';

/** Puts a trip on the desk: the one that lay there when the page was closed, else the last stored, else the demonstration. */
export async function start(): Promise<void> {
  const left = leftover();
  if (left !== null && (await pickUp(left))) return;
  const [listed, last] = [(await list()).value, lastOpen()];
  const stored = listed ?? [];
  const id = stored.find((trip) => trip.id === last)?.id ?? stored[0]?.id;
  if (id === undefined) {
    if (listed !== null && last !== null) notices.stand({ words: say.storage.gone });
    await openDemo();
    return;
  }
  const problems = await open.openStored(id);
  if (problems !== null) incoming.problems = { file: say.notices.storedTrip, list: problems };
  if (id === DEMO_ID) void layDemoGround();
}

/** The demonstration as it was left on this device, else as it is delivered. */
export async function openDemo(): Promise<void> {
  void layDemoGround();
  const stored = (await list()).value ?? [];
  if (stored.some(({ id }) => id === DEMO_ID)) {
    await open.openStored(DEMO_ID);
    return;
  }
  const { value, problems } = await demoTrip();
  if (value === null) incoming.problems = { file: say.files.demonstration, list: problems };
  else await open.open(value);
}

/** Opens what the last page left unstored; false where there is nothing in it that is not elsewhere. */
async function pickUp(left: Leftover): Promise<boolean> {
  const { atMs, trip, trackIsStored } = left;
  const stored = (await load(trip.id)).value;
  const { whole, lost } = joined(left, stored);
  const demoOnItsWay = stored === null && trip.id === DEMO_ID;
  if (lost > 0) notices.say(say.notices.photosNotStored(lost, trip.name));
  if (demoOnItsWay || (stored !== null && sameButTrack(stored, whole))) {
    clearLeftover();
    return false;
  }
  if (!trackIsStored) notices.say(say.notices.trackNotStored(trip.name));
  const summary = (await list()).value?.find(({ id }) => id === trip.id);
  if (summary !== undefined && summary.updatedMs > atMs) {
    notices.say(say.notices.changedElsewhere(trip.name));
    return open.open({ ...whole, id: newId(), name: say.notices.copyOf(trip.name) });
  }
  if (trip.id === DEMO_ID) void layDemoGround();
  return open.open(whole);
}
