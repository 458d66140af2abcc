import type { Words } from '../words.ts';

export const desks: Words['desks'] = {
  nav: 'Arbeitsplätze',
  scout: 'Erkunden',
  brief: 'Einweisen',
  archive: 'Archiv',
};
