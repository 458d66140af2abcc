import type { Words } from '../words.ts';

export const units: Words['units'] = {
  decimal: ',',
  unknown: 'nicht bekannt',
  level: 'eben',
  oneIn: (run) => `1 zu ${run}`,
};
