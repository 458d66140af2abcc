import type { Command } from './command.ts';
import { nothingBut } from './command.ts';
import { gpxFrom, kindOf, tripFrom } from './input.ts';

/** What is wrong with a file, and what it holds. */
export const check: Command = {
  usage: 'check FILE',
  sentence: 'What a recording (GPX) or a trip holds, and everything that is wrong with it.',
  run: async ({ file }) => {
    const kind = await kindOf(file);
    if (kind.value === null) return nothingBut(kind.problems);
    const { json, problems } = kind.value === 'trip' ? await tripHolds(file) : await gpxHolds(file);
    if (json === null) return nothingBut(problems);
    const text = Object.entries(json)
      .map(([name, held]) => `${name}: ${held}`)
      .join('\n');
    return { text: problems.length === 0 ? `${text}\nNothing is wrong with it.` : text, json, problems };
  },
};

async function gpxHolds(file: string) {
  const { value, problems } = await gpxFrom(file);
  const json = value && {
    kind: 'recording',
    name: value.name,
    tracks: value.tracks.length,
    points: value.tracks.reduce((sum, { length }) => sum + length, 0),
    waypoints: value.waypoints.length,
  };
  return { json, problems };
}

async function tripHolds(file: string) {
  const { value, problems } = await tripFrom(file);
  const json = value && {
    kind: 'trip',
    name: value.name,
    points: value.track?.length ?? 0,
    waypoints: value.waypoints.length,
    obstacles: value.obstacles.length,
    vehicles: value.vehicles.length,
  };
  return { json, problems };
}
