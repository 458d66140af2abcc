import { expect, test } from 'vitest';
import type { Obstacle } from '../../src/terrain/obstacle.ts';
import { presetNamed, stretchFrom } from '../../src/terrain/preset.ts';
import { obstacleFaults } from '../../src/ui/faultText.ts';
import { withValue } from '../../src/ui/groundEdit.ts';
import { addBypass, withStretch } from '../../src/ui/obstacleEdit.ts';

const good: Obstacle = {
  id: 'x',
  name: 'Ruts',
  preset: 'rutted climb',
  lng: 7,
  lat: 45,
  stationM: 0,
  stretch: stretchFrom(presetNamed('rutted climb')!),
  lines: [{ id: 'm', kind: 'main', name: 'Main line', offsetM: 0 }],
  note: '',
  photos: [],
};

test('what fits together has no fault', () => {
  expect(obstacleFaults(good, 'metric')).toEqual([]);
});

test('a rut that ends before it starts is named by its side and depth', () => {
  const turned = withValue(good.stretch, 'features.1.toM', -50);
  const [fault] = obstacleFaults({ ...good, stretch: turned }, 'metric');
  expect(fault).toMatch(/^Rut, right, 25 cm deep: It ends before it starts\./);
});

test('a fault on a bypass names the bypass', () => {
  const two = addBypass(good, 'b');
  const turned = withStretch(two, 'b', withValue(good.stretch, 'features.0.toM', -50));
  expect(obstacleFaults(turned, 'metric')[0]).toMatch(/^Bypass, Rut, left/);
});
