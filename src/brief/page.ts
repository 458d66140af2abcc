import { markSvg } from '../draw/mark.ts';
import { sectionSvg } from '../draw/section.ts';
import { tellingStationM } from '../draw/stance.ts';
import type { Direction } from '../terrain/obstacle.ts';
import type { System } from '../units.ts';
import { shown, slopeText } from '../units.ts';
import { vehicleFields } from '../vehicle/specs.ts';
import type { Answer, Briefing, Card, Stop } from './brief.ts';
import { CAUTIONS } from './cautions.ts';
import { featureWords } from './featureText.ts';
import type { Html } from './html.ts';
import { NOTHING, drawing, html } from './html.ts';
import { PAGE_STYLE } from './pageStyle.ts';
import { lineText } from './lineText.ts';
import { demandText, goesSomehow, limitMarginText, limitText } from './verdictText.ts';

const SECTION_PX = 420;

/** The briefing as one page of HTML that needs nothing else: the matrix, the obstacles in order, a card a driver. */
export function briefingPage(briefing: Briefing, system: System): string {
  const { outing, stops, cards } = briefing;
  const title = outing.name || 'Unnamed trip';
  return `<!doctype html>\n${
    html`<html lang="en">
      <head>
        <meta charset="utf-8" />
        <meta name="viewport" content="width=device-width" />
        <title>${title}: briefing</title>
        <style>
          ${drawing(PAGE_STYLE)}
        </style>
      </head>
      <body>
        <h1>${title}</h1>
        <p>${summary(briefing, system)}</p>
        ${outing.direction === 'reversed' ? html`<p class="strong">Against the recorded direction. Left and right are as the convoy comes to each obstacle; names of lines were given in the recorded direction.</p>` : NOTHING}
        ${outing.note === '' ? NOTHING : html`<p class="note">${outing.note}</p>`}
        <h2>Before anyone sets off</h2>
        <ul>
          ${CAUTIONS.map((caution) => html`<li>${caution}</li>`)}
        </ul>
        <h2>Who goes where</h2>
        ${stops.length === 0 || cards.length === 0 ? html`<p>No obstacles or no vehicles: nothing is judged.</p>` : matrix(briefing, system)}
        <h2>The obstacles in order</h2>
        ${stops.map((stop) => stopArticle(stop, briefing, system))}
        <h2>Cards for the drivers</h2>
        ${cards.map((card, i) => cardArticle(card, i + 1, outing.direction, system))}
      </body>
    </html> `.markup
  }`;
}

function summary({ outing, trackLengthM, stops }: Briefing, system: System): string {
  const { track, vehicles, direction } = outing;
  return [
    ...(track ? [track.name || 'unnamed track', shown(trackLengthM, 'distance', system)] : ['no track']),
    `travelled ${direction}`,
    counted(stops.length, 'obstacle'),
    counted(vehicles.length, 'vehicle'),
  ].join(', ');
}

function matrix({ outing, stops, cards }: Briefing, system: System): Html {
  const { direction } = outing;
  return html`<table class="matrix">
    <thead>
      <tr>
        <th scope="col">Obstacle</th>
        ${cards.map(({ vehicle }) => html`<th scope="col">${vehicle.name}</th>`)}
      </tr>
    </thead>
    <tbody>
      ${stops.map(
        ({ number, obstacle, answers }) =>
          html`<tr>
            <th scope="row">${number} ${obstacle.name}</th>
            ${answers.map((answer) => matrixCell(answer, direction, system))}
          </tr> `,
      )}
    </tbody>
  </table>`;
}

function matrixCell({ verdict, line }: Answer, direction: Direction, system: System): Html {
  const { word, rung } = verdict;
  const somehow = goesSomehow(word);
  const how = somehow
    ? [rung.name, ...(line.kind === 'main' ? [] : [lineText(line, direction, system)])].join(', ')
    : '';
  const look = word === 'goes' ? 'plain' : somehow ? 'asks' : 'halt';
  return html`<td class="${look}">
    ${drawing(markSvg(word, 20))} <span class="word">${word}</span> ${how}
  </td>`;
}

function stopArticle(stop: Stop, briefing: Briefing, system: System): Html {
  const { number, obstacle, stretch, distanceM, doubts, byEye, answers } = stop;
  const pulls = answers.flatMap((answer) =>
    answer.recovery ? [recoveryText(answer, briefing, system)] : [],
  );
  return html`<article>
    <h3>${number} ${obstacle.name}, at ${shown(distanceM, 'distance', system)}</h3>
    <p>${groundText(stop, system)}</p>
    ${stretch.features.length === 0 ? NOTHING : html`<p>${stretch.features.map((feature) => featureWords(feature, system)).join('; ')}.</p>`}
    ${obstacle.note === '' ? NOTHING : html`<p class="note">${obstacle.note}</p>`}
    ${doubts.length === 0 ? NOTHING : html`<p class="strong">Measure again before you rely on this: ${doubts.map(({ what }) => what).join(' ')}</p>`}
    ${byEye.values === 0 ? NOTHING : html`<p>Judged by eye: ${byEye.values} of ${byEye.of} values.</p>`}
    ${section(stop, system)}
    <p>
      Lines:
      ${obstacle.lines.map(({ name, kind }) => (name === kind ? name : `${name} (${kind})`)).join(', ')}.
    </p>
    ${
      pulls.length === 0
        ? NOTHING
        : html`<ul>
            ${pulls.map((text) => html`<li>${text}</li>`)}
          </ul>`
    }
  </article> `;
}

function groundText({ slope, stretch }: Stop, system: System): string {
  const { surface, corridor, plane, lengthM } = stretch;
  const camber =
    plane.camberRad === null
      ? 'camber not known'
      : plane.camberRad === 0
        ? 'no camber'
        : `${shown(Math.abs(plane.camberRad), 'angle', system)} camber, ${plane.camberRad > 0 ? 'left' : 'right'} side high`;
  const climbs =
    slope === null
      ? 'slope not known'
      : `${slopeText(slope.slopeRad)}${slope.from === 'track' ? ' by the track' : ''}`;
  return `${shown(lengthM, 'length', system)} of ${surface.condition} ${surface.material}; ${climbs}; ${camber}; room ${shown(corridor.leftM, 'length', system)} left (${corridor.leftBound}), ${shown(corridor.rightM, 'length', system)} right (${corridor.rightBound}), ${shown(corridor.headroomM, 'length', system)} above.`;
}

function section({ stretch }: Stop, system: System): Html {
  const shapes = stretch.features.filter(({ kind }) => kind !== 'softPatch');
  if (shapes.length === 0 || Number.isNaN(stretch.lengthM)) return NOTHING;
  const stationM = tellingStationM(stretch.features);
  const svg = sectionSvg({ stretch, stationM, offsetM: 0, vehicle: null, system, widthPx: SECTION_PX });
  return html`<figure>
    ${drawing(svg)}
    <figcaption>Cut across, to scale, seen as the convoy comes to it.</figcaption>
  </figure>`;
}

function recoveryText({ vehicle, recovery }: Answer, { outing }: Briefing, system: System): string {
  if (recovery === null) return '';
  const nameOf = (id: string) => outing.vehicles.find((other) => other.id === id)?.name ?? id;
  const offers = recovery.offers.map(({ vehicleId, means, tackle, cautions }) => {
    const rigged = tackle === null || tackle.parts === 1 ? '' : ` in ${tackle.parts} parts of rope`;
    return [`${nameOf(vehicleId)} by ${means}${rigged}.`, ...cautions].join(' ');
  });
  const pull = `${vehicle.name} needs a pull of about ${shown(recovery.pullN, 'force', system)}.`;
  return [pull, ...offers, ...recovery.cautions].join(' ');
}

function cardArticle(
  { vehicle, calls, plain }: Card,
  place: number,
  direction: Direction,
  system: System,
): Html {
  const estimated = vehicle.estimated.map((name) => vehicleFields[name].label.toLowerCase());
  return html`<article class="card">
    <h3>
      ${place} ${vehicle.name}${vehicle.driver === '' ? '' : `, ${vehicle.driver}`} (${vehicle.vehicleClass})
    </h3>
    ${
      calls.length === 0
        ? NOTHING
        : html`<table>
            <tbody>
              ${calls.map(({ stop, answer }) => call(stop, answer, direction, system))}
            </tbody>
          </table>`
    }
    ${plain.length === 0 ? NOTHING : html`<p>As it comes, on the main line: ${plain.join(', ')}.</p>`}
    ${estimated.length === 0 ? NOTHING : html`<p>Estimated, not measured: ${estimated.length > 12 ? `${estimated.length} values` : estimated.join(', ')}. A verdict on estimates is an estimate.</p>`}
  </article> `;
}

function call(
  { number, obstacle }: Stop,
  { verdict, line }: Answer,
  direction: Direction,
  system: System,
): Html {
  const somehow = goesSomehow(verdict.word);
  const doing = [
    ...(somehow ? [lineText(line, direction, system), verdict.rung.name] : []),
    demandText(verdict, system),
    limitText(verdict),
    limitMarginText(verdict, system),
  ].filter(Boolean);
  return html`<tr>
    <th scope="row">${number} ${obstacle.name}</th>
    <td class="${somehow ? 'asks' : 'halt'}">
      ${drawing(markSvg(verdict.word, 20))} <span class="strong">${verdict.word}</span>: ${doing.join('; ')}.
    </td>
  </tr> `;
}

function counted(n: number, noun: string): string {
  return `${n} ${noun}${n === 1 ? '' : 's'}`;
}
