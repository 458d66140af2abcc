/** What one driver keeps on the dashboard. */
export const cards = {
  asItComes: 'As it comes: nothing to engage, on the main line.',
  wayDown: 'On the way down:',
  ifItStopsOn: (place: string) => `If it stops, ${place}:`,
  ifItStops: 'If it stops:',
  walkFirst: 'Walk it first; in doubt, do not go. One vehicle on an obstacle at a time.',
  estimated: (what: string) => `Estimated, not measured: ${what}; a verdict on estimates is an estimate.`,
  manyValues: (many: number) => `${many} values of this vehicle`,
  stopBefore: (limit: string) => `: ${limit}. Stop before it; ask the leader.`,
  spotter: 'Spotter',
  pull: 'Pull',
  pullOf: (force: string, helper: string) => `of about ${force}: ${helper}.`,
  nobody: 'nobody here can give it: keep off',
  ownWinch: 'your own winch, once an anchor ahead is rigged',
  helper: (vehicle: string, means: string) => `${vehicle} ${means}; wait for it`,
};
