import { briefingOf } from '../brief/brief.ts';
import { gradeToldOf } from '../brief/gradeTold.ts';
import { briefingPage } from '../brief/page.ts';
import { advisedBy, aheadOf, inOrderOfTravel, matrixOf, surenessOf } from '../convoy/matrix.ts';
import { orderFor } from '../convoy/passes.ts';
import { placesOn } from '../convoy/places.ts';
import type { Command } from './command.ts';
import { nothingBut } from './command.ts';
import { tripFrom } from './input.ts';
import { pdfOf } from './pdf.ts';

/** The whole walk on one screen of code: a trip in, a briefing out. */
export const brief: Command = {
  usage: 'brief TRIP.json',
  sentence: "The leader's sheet and the drivers' cards of a trip, as a page of HTML to print, or as --pdf.",
  run: async ({ file, system, reversed, pdf }) => {
    const { value: trip, problems } = await tripFrom(file);
    if (trip === null) return nothingBut(problems);
    const outing = { ...trip, direction: reversed ? ('reversed' as const) : trip.direction };
    const places = placesOn(outing.track, outing.obstacles, outing.heldGrips);
    const ahead = aheadOf(outing.vehicles);
    const { cells } = matrixOf(places, outing.vehicles, outing.direction);
    const matrix = {
      cells: inOrderOfTravel(places, outing.direction).map((place, i) => {
        const sure = surenessOf(place, outing.vehicles, cells[i].map(advisedBy), outing.direction, ahead);
        return cells[i].map((cell, v) => ({ ...cell, goesIn: sure[v] }));
      }),
    };
    const order = orderFor(places, outing.vehicles, outing.direction);
    const briefing = briefingOf(outing, places, matrix, order, gradeToldOf(outing, 'australia', 'dry'));
    const { stops, cards, trackLengthM } = briefing;
    const json = { name: outing.name, direction: outing.direction, trackLengthM, order, stops, cards };
    const text = briefingPage(briefing, system);
    if (pdf === null) return { text, json, problems };
    const printed = await pdfOf(text, pdf);
    if (printed.value === null) return nothingBut([...problems, ...printed.problems]);
    return { text, bytes: printed.value, json, problems };
  },
};
