import type { Words } from '../words.ts';

export const margins: Words['margins'] = {
  justShort: 'knapp zu wenig',
  justEnough: 'gerade genug',
  short: (size) => `${size} zu wenig`,
  spare: (size) => `${size} Reserve`,
  maybe: (margin) => `vielleicht ${margin}`,
  asEntered: (margin) => `${margin}, wie eingegeben`,
  atWorst: (margin) => `im schlimmsten Fall ${margin}`,
  ofWeight: (share) => `${share} seines Gewichts`,
  nearest: (check) => `nächste Grenze: ${check}`,
  enterAt: (speed) => `mit mindestens ${speed} hineinfahren`,
  atLeast: (speed) => `mindestens ${speed}`,
  lacks: (force) => `im schlimmsten Fall fehlen ${force}; der Zug selbst braucht mehr`,
  outOfHundred: (many) => `${many} von 100`,
};
