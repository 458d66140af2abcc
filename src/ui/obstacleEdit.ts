import { offsetFields } from '../archive/fields.ts';
import type { Trip } from '../archive/trip.ts';
import { stepM } from '../route/ellipsoid.ts';
import type { Bypass, Line, Obstacle, SameGroundLine, Stretch } from '../terrain/obstacle.ts';
import type { Preset } from '../terrain/preset.ts';
import { stretchFrom } from '../terrain/preset.ts';
import { say } from '../words/words.ts';

/** A place where an obstacle is about to be pinned. */
export interface Pin {
  readonly lng: number;
  readonly lat: number;
  /** Along the track from its first point; without a track, straight from pin to pin from the first. */
  readonly stationM: number;
}

/** A pin where there is no track: it runs on from the last one, so that obstacles stand in the order of pinning. */
export function pinOnward(obstacles: readonly Obstacle[], lng: number, lat: number): Pin {
  const last = obstacles.at(-1);
  return { lng, lat, stationM: last === undefined ? 0 : last.stationM + stepM(last.lng, last.lat, lng, lat) };
}

export function obstacleOf(trip: Trip, id: string | null): Obstacle | undefined {
  return trip.obstacles.find((obstacle) => obstacle.id === id);
}

/** A new obstacle at a place; nothing of it is measured yet, so every size counts as judged by eye. */
export function pinObstacle(trip: Trip, pin: Pin, preset: Preset, id: string): Trip {
  const obstacle: Obstacle = {
    id,
    name: freeName(
      capital(say.preset[preset.name]),
      trip.obstacles.map(({ name }) => name),
    ),
    preset: preset.name,
    ...pin,
    stretch: stretchFrom(preset, {}, 'by eye'),
    lines: [{ id: `${id}-main`, kind: 'main', name: say.lines.mainName, offsetM: 0 }],
    note: '',
    photos: [],
  };
  return { ...trip, obstacles: inOrder([...trip.obstacles, obstacle]) };
}

/** The trip with one obstacle changed; the others keep their place in memory. */
export function changeObstacle(trip: Trip, id: string, change: (obstacle: Obstacle) => Obstacle): Trip {
  const obstacles = trip.obstacles.map((obstacle) => (obstacle.id === id ? change(obstacle) : obstacle));
  return { ...trip, obstacles: inOrder(obstacles) };
}

export function removeObstacle(trip: Trip, id: string): Trip {
  return { ...trip, obstacles: trip.obstacles.filter((obstacle) => obstacle.id !== id) };
}

/** The ground of one line replaced: the obstacle's own, or the bypass's. */
export function withStretch(obstacle: Obstacle, lineId: string | null, stretch: Stretch): Obstacle {
  if (lineId === null) return { ...obstacle, stretch };
  return changeLine(obstacle, lineId, (line) => (line.kind === 'bypass' ? { ...line, stretch } : line));
}

export function changeLine(obstacle: Obstacle, id: string, change: (line: Line) => Line): Obstacle {
  return { ...obstacle, lines: obstacle.lines.map((line) => (line.id === id ? change(line) : line)) };
}

/** How far a line may lie from the main line; its side is asked apart. */
export const offsetField = { ...offsetFields.offsetM, min: 0.05, max: 6 };

/** Where a new offset line starts: half a usual track width, so that one wheel runs where none ran. */
const FIRST_OFFSET_M = 0.4;

export function addOffset(obstacle: Obstacle, id: string): Obstacle {
  const line: SameGroundLine = {
    id,
    kind: 'offset',
    name: freeName(
      say.lines.offsetName,
      obstacle.lines.map(({ name }) => name),
    ),
    offsetM: FIRST_OFFSET_M,
  };
  return { ...obstacle, lines: [...obstacle.lines, line] };
}

/** A way around over other ground: as long and as wide as this one, with nothing in it yet and its slope unread. */
export function addBypass(obstacle: Obstacle, id: string): Obstacle {
  const { lengthM, surface, corridor } = obstacle.stretch;
  const line: Bypass = {
    id,
    kind: 'bypass',
    name: freeName(
      say.lines.bypassName,
      obstacle.lines.map(({ name }) => name),
    ),
    stretch: {
      lengthM,
      surface,
      corridor,
      plane: { slopeRad: null, camberRad: null },
      features: [],
      hows: {},
    },
    path: [],
  };
  return { ...obstacle, lines: [...obstacle.lines, line] };
}

/** The main line always stays. */
export function removeLine(obstacle: Obstacle, id: string): Obstacle {
  return { ...obstacle, lines: obstacle.lines.filter((line) => line.kind === 'main' || line.id !== id) };
}

function inOrder(obstacles: readonly Obstacle[]): readonly Obstacle[] {
  return obstacles.toSorted((a, b) => a.stationM - b.stationM);
}

/** `name`, or `name 2`, `name 3` … where it is taken. */
export function freeName(name: string, taken: readonly string[]): string {
  if (!taken.includes(name)) return name;
  let n = 2;
  while (taken.includes(`${name} ${n}`)) n++;
  return `${name} ${n}`;
}

export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
