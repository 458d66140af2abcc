import type { TrackRow } from '../archive/trackRow.ts';
import { say } from '../words/words.ts';
import type { Passed } from '../workers/clubServer.ts';
import { mergeText } from './mergeText.ts';

type Row = Pick<TrackRow, 'name' | 'obstacleCount' | 'visitCount' | 'outcomeCount' | 'conflictCount'>;

/** Names that are told one by one. */
const NAMED = 8;

/** What came from the server and went to it, in sentences, with what there is to choose since. */
export function passedText(
  passed: readonly Passed[],
  before: ReadonlyMap<string, Row>,
  row: (id: string) => Row | undefined,
): string[] {
  const names = (list: readonly Passed[]) => {
    const all = list.map(({ id }) => row(id)?.name || say.gradedTracks.unnamed);
    const rest = all.length - NAMED;
    return [...all.slice(0, NAMED), ...(rest > 0 ? [say.clubServer.more(rest)] : [])].join(', ');
  };
  const came = passed.flatMap(({ id, came }) => {
    const after = came ? row(id) : undefined;
    return after ? [mergeText(before.get(id), after)] : [];
  });
  const went = passed.filter((one) => one.went);
  const stayed = passed.filter((one) => one.stayed);
  return [
    ...new Set(came),
    ...(went.length > 0 ? [say.clubServer.went(names(went), went.length)] : []),
    ...(stayed.length > 0 ? [say.clubServer.stayed(names(stayed))] : []),
  ];
}
