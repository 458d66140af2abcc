import type { Disagreement } from '../route/disagreement.ts';
import { disagreementOf } from '../route/disagreement.ts';
import { modelBaselineM } from '../route/heights.ts';
import { slopeOf } from '../route/slope.ts';
import type { Track } from '../route/track.ts';
import type { System } from '../units.ts';
import { round, shown, shownShort } from '../units.ts';
import { say } from '../words/words.ts';

/** Whose elevations slopes are read off and how the others differ, in sentences; empty where there are only those recorded. */
export function heightsText(track: Track, system: System): string {
  const { model } = track;
  if (model === null) return '';
  const { name, nodeM, errorM, isUsed } = model;
  const length = (valueM: number) => round(valueM, 'length', system);
  const used = isUsed
    ? say.trackModel.slopesModel(
        name,
        length(nodeM),
        shownShort(errorM, 'length', system),
        length(modelBaselineM(model)),
      )
    : say.trackModel.slopesRecorded(name);
  const differs = disagreementOf(slopeOf(track, { from: 'recorded' }), slopeOf(track, { from: 'model' }));
  return `${used} ${disagreementText(differs, system)}`;
}

/** How a model and a recording differ, in one sentence. */
export function disagreementText(differs: Disagreement | null, system: System): string {
  if (differs === null) return say.trackModel.nowhereBoth;
  const metres = (valueM: number) => round(Math.abs(valueM), 'length', system);
  const side = (valueM: number) => (valueM < 0 ? 'below' : 'above');
  /** Shown as no metre at all, which lies neither above nor below. */
  const isNone = (valueM: number) => !/[1-9]/.test(metres(valueM));
  const { agree, usual, most } = say.trackModel;
  const { usualM, mostM } = differs;
  if (isNone(usualM) && isNone(mostM)) return agree.everywhere;
  const place = shown(differs.stationM, 'distance', system);
  return (
    (isNone(usualM) ? agree.usually : usual[side(usualM)](metres(usualM))) +
    (isNone(mostM) ? agree.there(place) : most[side(mostM)](metres(mostM), place))
  );
}
