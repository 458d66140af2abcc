import type { Words } from '../words.ts';

export const desks: Words['desks'] = {
  scout: 'Erkunden',
  brief: 'Einweisen',
  archive: 'Archiv',
};
