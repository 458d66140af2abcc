import type { Words } from '../words.ts';

export const order: Words['order'] = {
  needsHelp: 'braucht an jedem Platz irgendwo Hilfe',
  needsEarlier: 'bräuchte einen früheren Platz, um ohne Hilfe durchzukommen',
  upTo: (passes) =>
    `kommt nach höchstens ${passes} ${passes === 1 ? 'Überfahrt' : 'Überfahrten'} anderer noch ohne Hilfe durch`,
  anyPlace: 'kommt an jedem Platz ohne Hilfe durch',
  leads: (reason) => `fährt voraus: kann ziehen und ${reason}`,
  last: (reason) => `fährt zuletzt: kann jeden ziehen, der übrig ist, und ${reason}`,
};
