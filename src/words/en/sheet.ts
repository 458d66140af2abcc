/** The leader's sheet. */
export const sheet = {
  title: (trip: string) => `${trip}: briefing`,
  unnamedTrip: 'Unnamed trip',
  unnamedTrack: 'unnamed track',
  noTrack: 'no track',
  travelled: (direction: string) => `travelled ${direction}`,
  obstacles: (many: number) => `${many} obstacle${many === 1 ? '' : 's'}`,
  vehicles: (many: number) => `${many} vehicle${many === 1 ? '' : 's'}`,
  against:
    'Against the recorded direction. Left and right are as the convoy comes to each obstacle; names of lines were given in the recorded direction.',
  before: 'Before anyone sets off',
  who: 'Who goes where',
  nothingJudged: 'No obstacles or no vehicles: nothing is judged.',
  inOrder: 'The obstacles in order',
  mapKey: 'The heavier the steeper; ticked across from 15°.',
  order: 'The order',
  asEntered: (unaided: number, all: number) =>
    `The convoy as entered in which most go unaided: ${unaided} of ${all}, someone who can pull at each end where there is one.`,
  otherOrder: (unaided: number, all: number) =>
    `Not the order as entered, but the one in which most go unaided: ${unaided} of ${all}, someone who can pull at each end where there is one.`,
  pulls: 'Who needs a pull, and from whom',
  about: (force: string) => `about ${force}`,
  haltedAt: (vehicle: string, number: number, verdict: string) => `${vehicle} at ${number} (${verdict})`,
  halted: (list: string) => `Not through on any line: ${list}. Sort this out before setting off.`,
  moreThanOnce: 'More than once:',
  seeAbove: 'see above.',
  obstacle: 'Obstacle',
  elseAsItComes: 'Where nothing more is said: as it comes, on the main line.',
  howOften:
    '“80 of 100”: so often it goes at a crawl when each size is drawn from what was measured, give or take; always, where no number stands.',
  bypass: 'bypass',
  lines: (list: string) => `Lines: ${list}`,
  byEye: (values: number, all: number) => `By eye: ${values} of ${all} values`,
  measureAgain: (faults: string) => `Measure again before you rely on this: ${faults}`,
};
