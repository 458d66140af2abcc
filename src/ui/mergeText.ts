import type { TrackRow } from '../archive/trackRow.ts';
import { say } from '../words/words.ts';

type Counts = Pick<TrackRow, 'name' | 'obstacleCount' | 'visitCount' | 'outcomeCount' | 'conflictCount'>;

/** What a file brought to one track, in words; `before` is undefined where it was not here. */
export function mergeText(before: Counts | undefined, after: Counts): string {
  const words = say.gradedTracks.exchange;
  const name = after.name || say.gradedTracks.unnamed;
  const choices = after.conflictCount > 0 ? ` ${words.conflicts(after.conflictCount)}` : '';
  if (before === undefined) return words.isNew(name) + choices;
  const more = (count: 'obstacleCount' | 'visitCount' | 'outcomeCount') =>
    Math.max(0, after[count] - before[count]);
  const come = [
    [more('obstacleCount'), words.obstacles] as const,
    [more('visitCount'), words.visits] as const,
    [more('outcomeCount'), words.outcomes] as const,
  ].flatMap(([n, text]) => (n > 0 ? [text(n)] : []));
  return (come.length > 0 ? words.merged(name, come.join(', ')) : words.nothingMore(name)) + choices;
}
