import { list } from '../archive/store.ts';
import { incoming } from './incoming.svelte.ts';
import { lastOpen, open } from './trip.svelte.ts';

/** Puts a trip on the desk: the one that lay there when the page was closed, else the last stored, else an empty one. */
export async function start(): Promise<void> {
  const { value } = await list();
  const stored = value ?? [];
  const id = stored.find((trip) => trip.id === lastOpen())?.id ?? stored[0]?.id;
  if (id === undefined) return;
  const problems = await open.openStored(id);
  if (problems !== null) incoming.problems = { file: 'the stored trip', list: problems };
}
