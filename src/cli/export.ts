import { carrying } from '../archive/carried.ts';
import { OUT_FORMATS, outText } from '../archive/out/formats.ts';
import { gradeToldOf } from '../brief/gradeTold.ts';
import type { Command } from './command.ts';
import { nothingBut } from './command.ts';
import { tripFrom } from './input.ts';

/** The places and ways of a trip for other people's programs. */
export const exportTrip: Command = {
  usage: 'export TRIP.json',
  sentence: 'The obstacles, their lines and the recorded track as --gpx, --geojson or --kml.',
  run: async ({ file, system, reversed, format, carried }) => {
    if (format === null) {
      const what = 'Nothing says which format to write.';
      const done = `Add one of ${OUT_FORMATS.map((name) => `--${name}`).join(', ')}.`;
      return nothingBut([{ severity: 'error', where: 'export', what, done, times: 1 }]);
    }
    const { value: trip, problems } = await tripFrom(file);
    if (trip === null) return nothingBut(problems);
    const outing = {
      ...carrying(trip, carried),
      direction: reversed ? ('reversed' as const) : trip.direction,
    };
    const text = outText(outing, format, system, gradeToldOf(outing, 'australia', 'dry'));
    return { text: text.trimEnd(), json: { format, text }, problems };
  },
};
