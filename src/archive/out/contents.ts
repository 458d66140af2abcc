import { asMet, turned } from '../../brief/brief.ts';
import type { GradeTold } from '../../brief/gradeTold.ts';
import { gradeToldText, obstacleGradeText } from '../../brief/gradeTold.ts';
import { groundText, shapesText } from '../../brief/groundText.ts';
import { heightsText } from '../../brief/heightsText.ts';
import { lineText } from '../../brief/lineText.ts';
import { inOrderOfTravel } from '../../convoy/matrix.ts';
import { placesOn } from '../../convoy/places.ts';
import type { Path } from '../../route/geo.ts';
import { offsetPath } from '../../route/geo.ts';
import { heightsOf } from '../../route/heights.ts';
import { sliceOf, spansOf } from '../../route/station.ts';
import type { Track } from '../../route/track.ts';
import { knownSlope } from '../../terrain/ground.ts';
import { pathOf } from '../../terrain/bypassPath.ts';
import { presetText } from '../../terrain/preset.ts';
import type { Line, Obstacle } from '../../terrain/obstacle.ts';
import type { System } from '../../units.ts';
import { say } from '../../words/words.ts';
import type { Trip } from '../trip.ts';

/** A named place as it leaves the program. */
export interface OutPlace {
  readonly kind: 'obstacle' | 'waypoint';
  readonly name: string;
  readonly description: string;
  readonly lng: number;
  readonly lat: number;
  /** Above mean sea level; NaN where unknown. */
  readonly elevationM: number;
}

/** A piece of a way without a gap; the arrays are parallel. */
export interface OutPath extends Path {
  /** Above mean sea level, NaN where unknown; null where none is known. */
  readonly elevationM: Float64Array | null;
  /** Seconds since 1970-01-01T00:00:00Z, NaN where unknown; null where none is known. */
  readonly timeS: Float64Array | null;
}

/** A way as it leaves the program: what was recorded or planned, or a line through an obstacle. */
export interface OutWay {
  readonly kind: Track['kind'] | Line['kind'];
  readonly name: string;
  readonly description: string;
  readonly paths: readonly OutPath[];
}

/** What an export holds, whatever its format. */
export interface Contents {
  readonly name: string;
  readonly description: string;
  /** Obstacles in order of travel, then waypoints. */
  readonly places: readonly OutPlace[];
  /** The recording, then the lines. */
  readonly ways: readonly OutWay[];
}

function radioText({ radioChannel }: Trip): string {
  return radioChannel === '' ? '' : `${say.track.radioChannel}: ${radioChannel}`;
}

/**
 * Places and ways of a trip, everything in the recorded direction, sides in words as the convoy comes to them. Verdicts
 * stay out: a word without its cause and its cautions is not to be followed. A grade is told with its caution.
 */
export function contentsOf(trip: Trip, system: System, grade: GradeTold | null = null): Contents {
  const { track, obstacles, waypoints, direction, heldGrips } = trip;
  const numbers = new Map(inOrderOfTravel(obstacles, direction).map(({ id }, i) => [id, i + 1]));
  const numberOf = ({ id }: Obstacle) => numbers.get(id) ?? 0;
  const reversed = direction === 'reversed';
  const nameOf = (id: string) => {
    const obstacle = obstacles.find((one) => one.id === id);
    return obstacle === undefined ? '' : `${numberOf(obstacle)} ${obstacle.name}`;
  };
  const trackGradeText = (told: GradeTold) => `${say.grading.grade}: ${gradeToldText(told, nameOf, system)}`;
  const places = placesOn(track, obstacles, heldGrips).map(({ obstacle, trackSlope }): OutPlace => {
    const stretch = asMet(obstacle.stretch, reversed);
    const slope = turned(knownSlope(obstacle.stretch, trackSlope), reversed);
    const words = [
      presetText(obstacle.preset),
      groundText(stretch, slope, system),
      shapesText(stretch, system),
      obstacle.note,
      grade && obstacleGradeText(grade, obstacle.id),
    ];
    return {
      kind: 'obstacle',
      name: `${numberOf(obstacle)} ${obstacle.name || presetText(obstacle.preset)}`,
      description: words.filter(Boolean).join('. '),
      lng: obstacle.lng,
      lat: obstacle.lat,
      elevationM: NaN,
    };
  });
  return {
    name: trip.name,
    description: [trip.note, radioText(trip), grade && trackGradeText(grade)].filter(Boolean).join('\n'),
    places: [
      ...inOrderOfTravel(places, direction),
      ...waypoints.map((waypoint): OutPlace => ({ kind: 'waypoint', ...waypoint })),
    ],
    ways: [
      ...(track === null || track.length === 0 ? [] : [recordedWay(track, system)]),
      ...inOrderOfTravel(obstacles, direction).flatMap((obstacle) =>
        obstacle.lines.flatMap((line): OutWay[] => {
          const paths = pathsOf(track, obstacle, line);
          if (paths.length === 0) return [];
          const name = say.exports.line(numberOf(obstacle), line.name);
          return [{ kind: line.kind, name, description: lineText(line, direction, system), paths }];
        }),
      ),
    ],
  };
}

/** With the elevations that its slopes are read off; whose they are is told. */
function recordedWay(track: Track, system: System): OutWay {
  const { kind, name } = track;
  const { elevationM } = heightsOf(track);
  const description = [track.description, heightsText(track, system)].filter(Boolean).join('\n');
  const paths = spansOf(track).map(({ from, to }) => ({
    lng: track.lng.subarray(from, to),
    lat: track.lat.subarray(from, to),
    elevationM: elevationM.subarray(from, to),
    timeS: track.timeS.subarray(from, to),
  }));
  return { kind, name, description, paths };
}

/** The track's own stretch, that moved sideways, or a path of its own; none where there is no track or it was not drawn. */
export function pathsOf(track: Track | null, { stationM, stretch }: Obstacle, line: Line): OutPath[] {
  const bare = (path: Path): OutPath => ({ ...path, elevationM: null, timeS: null });
  if (line.kind === 'bypass') return line.path.length < 2 ? [] : [bare(pathOf(line.path))];
  if (track === null || Number.isNaN(stretch.lengthM)) return [];
  const half = stretch.lengthM / 2;
  const paths = sliceOf(track, stationM - half, stationM + half);
  return paths.map((path) => bare(line.kind === 'offset' ? offsetPath(path, line.offsetM) : path));
}
