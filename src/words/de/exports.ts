import type { Words } from '../words.ts';

export const exports: Words['exports'] = {
  line: (obstacle, line) => `Hindernis ${obstacle}: ${line}`,
  places: 'Orte',
  ways: 'Wege',
};
