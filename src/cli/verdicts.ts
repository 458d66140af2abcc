import { CAUTIONS } from '../brief/cautions.ts';
import { descentText, engineOf } from '../brief/descentText.ts';
import { demandText, goesSomehow, limitMarginText, limitText } from '../brief/verdictText.ts';
import type { Cell } from '../convoy/matrix.ts';
import { inOrderOfTravel, matrixOf } from '../convoy/matrix.ts';
import { placesOn } from '../convoy/places.ts';
import type { Verdict } from '../grade/verdict.ts';
import type { Line } from '../terrain/obstacle.ts';
import type { System } from '../units.ts';
import type { Vehicle } from '../vehicle/vehicle.ts';
import type { Command } from './command.ts';
import { nothingBut } from './command.ts';
import { tripFrom } from './input.ts';
import { tableText } from './table.ts';

interface Row {
  readonly vehicle: Vehicle;
  readonly line: Line;
  readonly verdict: Verdict;
}

/** The matrix of a trip: every vehicle at every obstacle. */
export const verdicts: Command = {
  usage: 'verdicts TRIP.json',
  sentence: 'What each vehicle of a trip does at each obstacle, on which line, with which aids, and why.',
  run: async ({ file, system, reversed }) => {
    const { value: trip, problems } = await tripFrom(file);
    if (trip === null) return nothingBut(problems);
    const direction = reversed ? 'reversed' : trip.direction;
    const places = placesOn(trip.track, trip.obstacles, trip.heldGrips);
    const { cells } = matrixOf(places, trip.vehicles, direction);
    const stops = inOrderOfTravel(places, direction).map(({ obstacle }, i) => ({
      obstacle,
      rows: cells[i].map((cell, v): Row => {
        const { lineId, verdict } = cell.verdicts[cell.best];
        return {
          vehicle: trip.vehicles[v],
          line: obstacle.lines.find(({ id }) => id === lineId)!,
          verdict,
        };
      }),
    }));
    const head = `${trip.name || 'Unnamed trip'}, travelled ${direction}`;
    const text = [
      head,
      ...stops.map(
        ({ obstacle, rows }, i) => `${i + 1}  ${obstacle.name || obstacle.preset}\n${tableOf(rows, system)}`,
      ),
      CAUTIONS.join('\n'),
    ].join('\n\n');
    return { text, json: { direction, cells: cells.flat().map(plain), cautions: CAUTIONS }, problems };
  },
};

function tableOf(rows: readonly Row[], system: System): string {
  return tableText<Row>(
    [
      { head: 'vehicle', cell: ({ vehicle }) => vehicle.name || vehicle.vehicleClass },
      { head: 'verdict', cell: ({ verdict }) => verdict.word },
      { head: 'line', cell: ({ line, verdict }) => (goesSomehow(verdict.word) ? line.name : '') },
      { head: 'aids', cell: ({ verdict }) => (goesSomehow(verdict.word) ? verdict.rung.name : '') },
      {
        head: 'margin',
        cell: ({ verdict }) => limitMarginText(verdict, system),
      },
      {
        head: 'why',
        cell: ({ verdict, vehicle }) =>
          [
            limitText(verdict),
            demandText(verdict, system),
            goesSomehow(verdict.word) ? descentText(verdict, vehicle.values, system) : '',
          ]
            .filter(Boolean)
            .join('; '),
      },
    ],
    rows,
  );
}

/** A cell for other programs: SI units, unknown as null. */
function plain({ obstacleId, vehicleId, verdicts, best }: Cell) {
  return {
    obstacleId,
    vehicleId,
    best: verdicts[best].lineId,
    lines: verdicts.map(({ lineId, verdict }) => ({
      lineId,
      word: verdict.word,
      rung: verdict.rung.name,
      cause: verdict.cause,
      limit: verdict.limit,
      entrySpeedMps: verdict.entrySpeedMps,
      pullN: verdict.pullN,
      engineBraking: engineOf(verdict),
    })),
  };
}
