import type { Changed } from '../archive/conflict.ts';
import type { System } from '../units.ts';
import { say } from '../words/words.ts';
import { spotText, valueText } from './spotText.ts';

/** One change in words: what, and from what to what. */
export function changeText({ spot, before, after }: Changed, system: System): string {
  const words = say.gradedTracks.history;
  const value = (told: Changed['after']) => valueText(spot, told, system);
  if (spot.field === 'there') {
    const what = spotText({ ...spot, field: '' }).replace(/, $/, '') || say.gradedTracks.spot.track;
    return after.value === true ? words.added(what) : words.removed(what);
  }
  const what = spotText(spot);
  if (before.length === 0) return words.set(what, value(after));
  if (before.length === 1) return words.changed(what, value(before[0]), value(after));
  const others = before.map(value).filter((text) => text !== value(after));
  return words.chose(what, value(after), [...new Set(others)].join(', '));
}
