import type { Words } from '../words.ts';

export const condition: Words['condition'] = {
  sizes: {
    rut: 'Tiefste Spurrille',
    hole: 'Tiefstes Loch',
    ledge: 'Höchste Stufe',
    ditch: 'Tiefster Graben',
    hump: 'Höchste Kuppe',
    log: 'Dickster Stamm',
    rock: 'Höchster Stein',
    water: 'Tiefstes Wasser',
    softPatch: 'Weichster Boden (Cone-Index)',
  },
  notFound: 'keine gefunden',
  stale: 'seither nicht bekannt',
  today: 'heute',
  change: {
    harder: (size, from, to) => `${size}: schwerer, von ${from} auf ${to}`,
    easier: (size, from, to) => `${size}: leichter, von ${from} auf ${to}`,
    same: (size, to) => `${size}: ${to}, keine messbare Änderung`,
  },
};
