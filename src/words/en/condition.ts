/** How a place changes from visit to visit. */
export const condition = {
  sizes: {
    rut: 'Deepest rut',
    hole: 'Deepest hole',
    ledge: 'Highest step',
    ditch: 'Deepest ditch',
    hump: 'Highest hump',
    log: 'Thickest log',
    rock: 'Tallest rock',
    water: 'Deepest water',
    softPatch: 'Softest ground (cone index)',
  },
  notFound: 'none found',
  stale: 'not known since',
  today: 'today',
  change: {
    harder: (size: string, from: string, to: string) => `${size}: harder, from ${from} to ${to}`,
    easier: (size: string, from: string, to: string) => `${size}: easier, from ${from} to ${to}`,
    same: (size: string, to: string) => `${size}: ${to}, no change that could be measured`,
  },
};
