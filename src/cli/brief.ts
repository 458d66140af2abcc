import { briefingOf } from '../brief/brief.ts';
import { briefingPage } from '../brief/page.ts';
import { matrixOf } from '../convoy/matrix.ts';
import { placesOn } from '../convoy/places.ts';
import type { Command } from './command.ts';
import { nothingBut } from './command.ts';
import { tripFrom } from './input.ts';

/** The whole walk on one screen of code: a trip in, a briefing out. */
export const brief: Command = {
  usage: 'brief TRIP.json',
  sentence: 'The briefing of a trip as one page of HTML, to print.',
  run: async ({ file, system, reversed }) => {
    const { value: trip, problems } = await tripFrom(file);
    if (trip === null) return nothingBut(problems);
    const outing = { ...trip, direction: reversed ? ('reversed' as const) : trip.direction };
    const places = placesOn(outing.track, outing.obstacles);
    const matrix = matrixOf(places, outing.vehicles, outing.direction);
    const briefing = briefingOf(outing, places, matrix);
    const { stops, cards, trackLengthM } = briefing;
    const json = { name: outing.name, direction: outing.direction, trackLengthM, stops, cards };
    return { text: briefingPage(briefing, system), json, problems };
  },
};
