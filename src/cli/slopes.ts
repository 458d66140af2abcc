import type { Climb, Steepest, SteepestPair } from '../route/climb.ts';
import { climbOf, STEEPEST_OVER_M, steepestOf } from '../route/climb.ts';
import type { SlopeProfile, SlopeSegment } from '../route/slope.ts';
import { slopeOf } from '../route/slope.ts';
import type { Track } from '../route/track.ts';
import type { System } from '../units.ts';
import { round, shown, slopeText } from '../units.ts';
import type { Answer, Command } from './command.ts';
import { nothingBut } from './command.ts';
import { gpxFrom } from './input.ts';
import type { Options } from './options.ts';
import { tableText } from './table.ts';

/** Stretches of like slope of each track in a recording. */
export const slopes: Command = {
  usage: 'slopes FILE.gpx',
  sentence: 'The stretches of like slope of each track, with how well they are known.',
  run: async (options) => {
    const { value, problems } = await gpxFrom(options.file);
    if (value === null) return nothingBut(problems);
    const tracks = value.tracks.map((track) => ({ track, profile: slopeOf(track) }));
    const answer: Answer = {
      text: tracks.map(({ track, profile }) => textOf(track, profile, options)).join('\n\n'),
      json: tracks.map(({ track, profile }) => ({
        name: track.name,
        kind: track.kind,
        points: track.length,
        lengthM: lengthOf(track),
        baselineM: profile.baselineM,
        ...climbs(profile, options.reversed),
        steepest: steepestRows(profile, lengthOf(track), options.reversed),
        segments: travelled(profile.segments, lengthOf(track), options.reversed),
      })),
      problems,
    };
    return answer;
  },
};

function textOf(track: Track, profile: SlopeProfile, { system, reversed }: Options): string {
  const { baselineM, segments } = profile;
  const lengthM = lengthOf(track);
  const parts = track.segmentStart.length;
  const head = [
    track.name || `Unnamed ${track.kind}`,
    `${shown(lengthM, 'distance', system)}, ${track.length.toLocaleString('en')} points`,
    ...(parts > 1 ? [`${parts} parts with gaps between`] : []),
    ...(reversed ? ['reversed'] : []),
  ].join(', ');
  const note = `Slope is read over ${round(baselineM, 'length', system)} of track: a shorter pitch may be steeper than it says.`;
  const rows = travelled(segments, lengthM, reversed);
  if (rows.length === 0) return `${head}\nThe track has no length, and so no slope.`;
  const table = tableText<SlopeSegment>(
    [
      { head: 'from', right: true, cell: ({ fromM }) => shown(fromM, 'distance', system) },
      { head: 'to', right: true, cell: ({ toM }) => shown(toM, 'distance', system) },
      { head: 'slope', cell: ({ slopeRad }) => slopeText(slopeRad) },
      { head: '±', right: true, cell: ({ plusMinusRad }) => shown(plusMinusRad, 'angle', system) },
      { head: 'rise', right: true, cell: ({ riseM }) => shown(riseM, 'length', system) },
    ],
    rows,
  );
  const { ascentM, descentM } = climbs(profile, reversed);
  const length = (valueM: number) => round(valueM, 'length', system);
  const up = `Up ${length(ascentM)} and down ${length(descentM)} in all.`;
  const steepest = tableText<SteepestRow>(
    [
      { head: 'steepest over', right: true, cell: ({ overM }) => length(overM) },
      { head: 'climb', cell: ({ climb }) => steepestText(climb, system) },
      { head: 'descent', cell: ({ descent }) => steepestText(descent, system) },
    ],
    steepestRows(profile, lengthM, reversed),
  );
  return `${head}\n${note}\n${up}\n\n${steepest}\n\n${table}`;
}

/** Metres up and down in the direction of travel. */
function climbs(profile: SlopeProfile, reversed: boolean): Climb {
  const { ascentM, descentM } = climbOf(profile);
  return reversed ? { ascentM: descentM, descentM: ascentM } : { ascentM, descentM };
}

interface SteepestRow extends SteepestPair {
  readonly overM: number;
}

function steepestRows(profile: SlopeProfile, lengthM: number, reversed: boolean): SteepestRow[] {
  return STEEPEST_OVER_M.map((overM) => {
    const { climb, descent } = steepestOf(profile, overM);
    if (!reversed) return { overM, climb, descent };
    return { overM, climb: turned(descent, lengthM), descent: turned(climb, lengthM) };
  });
}

/** The same stretch met from the other end. */
function turned(steepest: Steepest | null, lengthM: number): Steepest | null {
  if (steepest === null) return null;
  const { fromM, toM, slopeRad } = steepest;
  return { ...steepest, fromM: lengthM - toM, toM: lengthM - fromM, slopeRad: -slopeRad };
}

function steepestText(steepest: Steepest | null, system: System): string {
  if (steepest === null) return 'none that is known';
  const { slopeRad, plusMinusRad, fromM } = steepest;
  return `${slopeText(slopeRad)} ± ${shown(plusMinusRad, 'angle', system)} at ${shown(fromM, 'distance', system)}`;
}

/** Segments as they are met, measured from where the travel begins. */
function travelled(
  segments: readonly SlopeSegment[],
  lengthM: number,
  reversed: boolean,
): readonly SlopeSegment[] {
  if (!reversed) return segments;
  return segments.toReversed().map(({ fromM, toM, slopeRad, riseM, ...rest }) => ({
    ...rest,
    fromM: lengthM - toM,
    toM: lengthM - fromM,
    slopeRad: -slopeRad,
    riseM: -riseM,
  }));
}

function lengthOf(track: Track): number {
  return track.length === 0 ? 0 : track.distanceM[track.length - 1];
}
