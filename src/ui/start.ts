import type { TripSummary } from '../archive/store.ts';
import { list, load } from '../archive/store.ts';
import { troubleOf } from '../archive/storeProblem.ts';
import type { Trip } from '../archive/trip.ts';
import { say } from '../words/words.ts';
import { DEMO_ID, demoTrip, layDemoGround } from './demo.ts';
import { newId } from './identity.ts';
import type { Leftover } from './leftover.ts';
import { clearLeftover, joined, leftovers, sameButTrack } from './leftover.ts';
import { notices } from './notice.svelte.ts';
import { tell } from './tell.ts';
import { lastOpen, open } from './trip.svelte.ts';

/**
 * Puts a trip on the desk: the one that lay there when the page was closed, else the last stored, else the demonstration.
 * Where the store does not say what it holds, that is said, and what the last page left unstored stays for the next one.
 */
export async function start(): Promise<void> {
  const { value: stored, problems } = await list();
  if (stored === null) {
    await layDemo();
    // Where nothing can be stored, the desk says so of what lies on it.
    if (troubleOf(problems) !== 'not available') tell(say.notices.storedTrip, problems);
    return;
  }
  let picked = false;
  for (const left of leftovers()) picked = (await pickUp(left)) || picked;
  if (picked) return;
  const last = lastOpen();
  const id = stored.find((trip) => trip.id === last)?.id ?? stored[0]?.id;
  if (id === undefined) {
    if (last !== null) notices.stand({ words: say.storage.gone });
    await openDemo();
    return;
  }
  tell(say.notices.storedTrip, (await open.openStored(id)) ?? []);
  if (id === DEMO_ID) void layDemoGround();
}

/** The demonstration as it was left on this device, else as it is delivered. */
export async function openDemo(): Promise<void> {
  const stored = (await list()).value ?? [];
  if (!stored.some(({ id }) => id === DEMO_ID)) {
    const trip = await deliveredDemo();
    if (trip !== null) await open.open(trip);
    return;
  }
  void layDemoGround();
  await open.openStored(DEMO_ID);
}

/** The demonstration without asking the store for anything. */
async function layDemo(): Promise<void> {
  const trip = await deliveredDemo();
  if (trip !== null) open.lay(trip);
}

async function deliveredDemo(): Promise<Trip | null> {
  void layDemoGround();
  const { value, problems } = await demoTrip();
  if (value === null) tell(say.files.demonstration, problems);
  return value;
}

/** Opens what the last page left unstored; false where there is nothing in it that is not elsewhere, or not now. */
async function pickUp(left: Leftover): Promise<boolean> {
  const { trip, trackIsStored } = left;
  const { value: stored, problems } = await load(trip.id);
  const trouble = stored === null ? troubleOf(problems) : null;
  if (trouble === 'silent') return false;
  const isUnread = trouble !== null && trouble !== 'missing';
  const { whole, lost } = joined(left, stored);
  const demoOnItsWay = trouble === 'missing' && trip.id === DEMO_ID;
  if (lost > 0) notices.say(say.notices.photosNotStored(lost, trip.name));
  if (demoOnItsWay || (stored !== null && sameButTrack(stored, whole))) {
    clearLeftover(left);
    return false;
  }
  if (!trackIsStored) notices.say(say.notices.trackNotStored(trip.name));
  const summary = (await list()).value?.find(({ id }) => id === trip.id);
  if (isUnread || (summary !== undefined && !goesOnFrom(left, summary))) {
    notices.say((isUnread ? say.notices.storedUnread : say.notices.changedElsewhere)(trip.name));
    const own = { ...whole, id: newId(), name: say.notices.copyOf(trip.name) };
    return laid(left, own);
  }
  if (trip.id === DEMO_ID) void layDemoGround();
  return laid(left, whole);
}

/** Whether it is what became of the trip as it is stored. A window that closes late may have left what is older. */
function goesOnFrom({ after, atMs }: Leftover, { updatedMs }: TripSummary): boolean {
  return after === null ? updatedMs <= atMs : after.includes(updatedMs);
}

/** What was left stays until it is stored. */
async function laid(left: Leftover, trip: Trip): Promise<boolean> {
  const lies = await open.open(trip);
  if (lies && open.keeping.state === 'kept') clearLeftover(left);
  return lies;
}
