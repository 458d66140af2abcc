import { readTrip } from '../archive/share.ts';
import type { Problem, Reading } from '../problem.ts';
import type { Trip } from '../archive/trip.ts';
import { say } from '../words/words.ts';
import { relief } from './relief.svelte.ts';

/** The trip's own name in the store. Its place, people and measurements are invented. */
export const DEMO_ID = 'demo';

const OUTING = 'demo/outing.json';
const GROUND = 'demo/ember-range.asc.gz';

/** The demonstration outing as it is delivered with the program. */
export async function demoTrip(): Promise<Reading<Trip>> {
  try {
    const answer = await fetch(OUTING);
    return answer.ok ? readTrip(await answer.text()) : missing(`${answer.status}`);
  } catch (error) {
    return missing(String(error));
  }
}

/** Its ground, for the map; the map is drawn without it where it cannot be had. */
export async function layDemoGround(): Promise<void> {
  try {
    const answer = await fetch(GROUND);
    if (answer.ok) await relief.layUnder(DEMO_ID, await answer.blob(), 'ember-range.asc.gz');
  } catch {
    return;
  }
}

function missing(why: string): Reading<Trip> {
  const problem: Problem = {
    severity: 'error',
    where: OUTING,
    what: say.files.noDemo(why),
    done: say.files.noDemoDone,
    times: 1,
  };
  return { value: null, problems: [problem] };
}
