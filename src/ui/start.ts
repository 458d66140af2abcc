import { list } from '../archive/store.ts';
import { DEMO_ID, demoTrip, layDemoGround } from './demo.ts';
import { incoming } from './incoming.svelte.ts';
import { lastOpen, open } from './trip.svelte.ts';

/** Puts a trip on the desk: the one that lay there when the page was closed, else the last stored, else the demonstration. */
export async function start(): Promise<void> {
  const stored = (await list()).value ?? [];
  const id = stored.find((trip) => trip.id === lastOpen())?.id ?? stored[0]?.id;
  if (id === undefined) {
    await openDemo();
    return;
  }
  const problems = await open.openStored(id);
  if (problems !== null) incoming.problems = { file: 'the stored trip', list: problems };
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
  if (value === null) incoming.problems = { file: 'demonstration', list: problems };
  else await open.open(value);
}
