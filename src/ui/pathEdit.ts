import { TRIP_LIMITS } from '../archive/limits.ts';
import type { Trip } from '../archive/trip.ts';
import type { Problem, Reading } from '../problem.ts';
import { stepM } from '../route/ellipsoid.ts';
import type { Track } from '../route/track.ts';
import type { BypassPath } from '../terrain/bypassPath.ts';
import { asRecorded, pathFromTrack } from '../terrain/bypassPath.ts';
import type { Bypass, Obstacle } from '../terrain/obstacle.ts';
import type { System } from '../units.ts';
import { counted, shown } from '../units.ts';
import { say } from '../words/words.ts';
import { changeLine, changeObstacle, obstacleOf } from './obstacleEdit.ts';

/** A bypass that leads nowhere within this of its obstacle is likely another's. */
const NEAR_M = 500;

export function bypassOf(trip: Trip, obstacleId: string, lineId: string): Bypass | undefined {
  const line = obstacleOf(trip, obstacleId)?.lines.find(({ id }) => id === lineId);
  return line?.kind === 'bypass' ? line : undefined;
}

/** The trip with the path of a bypass replaced, turned to run as the track was recorded. */
export function withPath(trip: Trip, obstacleId: string, lineId: string, path: BypassPath): Trip {
  return changeObstacle(trip, obstacleId, (obstacle) => {
    const turned = trip.track === null ? path : asRecorded(path, trip.track, obstacle.stationM);
    return changeLine(obstacle, lineId, (line) =>
      line.kind === 'bypass' ? { ...line, path: turned } : line,
    );
  });
}

/** A recording was read for a bypass that was removed meanwhile. */
export function pathHasNoBypass(name: string): Problem {
  return { severity: 'error', where: name, what: say.lines.gone, done: say.lines.goneDone, times: 1 };
}

/** What a recording gives for the path of a bypass, and what to look at twice. */
export function pathOfRecording(
  recording: Track,
  { lng, lat, name }: Obstacle,
  system: System,
): Reading<BypassPath> {
  const path = pathFromTrack(recording, TRIP_LIMITS.path);
  const problems: Problem[] = [];
  const warn = (what: string, done: string) =>
    problems.push({
      severity: 'warning',
      where: recording.name || say.track.unnamedTrack,
      what,
      done,
      times: 1,
    });
  const gaps = recording.segmentStart.length - 1;
  if (gaps > 0) warn(say.lines.gaps(gaps), say.lines.gapsDone);
  if (path.length < recording.length)
    warn(say.lines.tooMany(counted(recording.length)), say.lines.tooManyDone(counted(path.length)));
  const offM = path.reduce((least, at) => Math.min(least, stepM(lng, lat, ...at)), Infinity);
  if (offM > NEAR_M)
    warn(
      say.lines.farOff(name || say.obstacle.theObstacle, shown(offM, 'distance', system)),
      say.lines.farOffDone,
    );
  return { value: path, problems };
}
