import { expect, test } from 'vitest';
import { disagreementText } from '../../src/brief/heightsText.ts';

test('what is shown as no metre at all lies neither above nor below', () => {
  const differs = (usualM: number, mostM: number) =>
    disagreementText({ usualM, mostM, stationM: 1400 }, 'metric');
  expect(differs(0.3, -0.4)).toBe('The model and the recording agree wherever both are known.');
  expect(differs(-0.3, 6)).toBe(
    'The model and the recording usually agree; farthest from that at 1.40 km, where the model lies 6 m above.',
  );
  expect(differs(5, 0.2)).toBe(
    'The model usually lies 5 m above the recording; farthest from that at 1.40 km, where the two agree.',
  );
  expect(differs(5, -2)).toBe(
    'The model usually lies 5 m above the recording; farthest from that at 1.40 km, where the model lies 2 m below.',
  );
});
