import { expect, test } from 'vitest';
import { whereWords } from '../../src/ui/whereWords.ts';

test.each([
  ['obstacles[2].stretch.features[0].depthM', 'obstacle 3, shape 1, Depth'],
  [
    'Ember ridge: surveyed[0].visits[4].stretch.plane.camberRad',
    'Ember ridge: obstacle 1, visit 5, Cross slope',
  ],
  ['vehicles[11]', 'vehicle 12'],
  ['obstacles[0].colour', 'obstacle 1, colour'],
  ['vehicles[0].values.widthM', 'vehicle 1, Width over mirrors'],
])('%s is %s', (path, words) => expect(whereWords(path)).toBe(words));

test.each(['line 12, <trkpt>', 'features[1].geometry[0]', 'the file', 'notes.txt', 'obstacles[0]x'])(
  'what has no word stays: %s',
  (where) => expect(whereWords(where)).toBe(where),
);
