import { expect, test } from 'vitest';
import { atOnce } from '../../src/ui/atOnce.ts';

function at(kind: string, timeStamp: number): Event {
  return Object.defineProperty(new Event(kind), 'timeStamp', { value: timeStamp });
}

test('moves are told at once but no closer than a few milliseconds, and the last of a frame always', () => {
  const element = new EventTarget() as Element;
  const told: number[] = [];
  const heard = atOnce(element, ({ timeStamp }) => told.push(timeStamp));
  for (const ms of [100, 101, 107, 108, 112]) element.dispatchEvent(at('pointerrawupdate', ms));
  element.dispatchEvent(at('pointermove', 112));
  expect(told).toEqual([100, 108, 112]);
  heard.destroy();
  element.dispatchEvent(at('pointerrawupdate', 200));
  element.dispatchEvent(at('pointermove', 200));
  expect(told).toHaveLength(3);
});
