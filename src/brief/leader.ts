import { canWear } from '../convoy/passes.ts';
import { profileSvg } from '../draw/profile.ts';
import { sheetSvg } from '../draw/sheet.ts';
import { otherHeights } from '../route/heights.ts';
import { slopeOf } from '../route/slope.ts';
import { offerText } from './offerText.ts';
import type { System } from '../units.ts';
import { shown } from '../units.ts';
import type { Answer, Briefing } from './brief.ts';
import { CAUTIONS } from './cautions.ts';
import { gradeToldText } from './gradeTold.ts';
import { heightsText } from './heightsText.ts';
import type { Html } from './html.ts';
import { NOTHING, drawing, html } from './html.ts';
import { matrixTable } from './matrixTable.ts';
import { obstacleBlock } from './obstacleBlock.ts';
import { say } from '../words/words.ts';

/** Of the paper's width in pixels of 1/96 inch: what Letter and A4 both leave between the margins, and half of it. */
const WIDE_PX = 700;
const HALF_PX = 340;
const PROFILE_PX = 165;
const SHEET_PX = 380;

/** What the leader reads out and keeps: where, in what order, who goes, who is pulled by whom, and the ground. */
export function leaderSheet(briefing: Briefing, system: System): Html {
  const { outing, stops, cards } = briefing;
  const judged = stops.length > 0 && cards.length > 0;
  return html`<section class="leader">
    <h1>${outing.name || say.sheet.unnamedTrip}</h1>
    <p>${summary(briefing, system)}</p>
    ${grade(briefing, system)}
    ${outing.direction === 'reversed' ? html`<p class="strong">${say.sheet.against}</p>` : NOTHING}
    ${outing.note === '' ? NOTHING : html`<p class="note meet">${outing.note}</p>`}
    <p class="radio">
      <b>${say.track.radioChannel}:</b>
      ${outing.radioChannel === '' ? html`<span class="blank"></span>` : outing.radioChannel}
    </p>
    ${mapFigure(briefing, system)} ${order(briefing)}
    <h2>${say.sheet.before}</h2>
    <ul class="cautions">
      ${CAUTIONS.map((caution) => html`<li>${caution}</li>`)}
    </ul>
    ${profileFigure(briefing, system)}
    <h2>${say.sheet.who}</h2>
    ${judged ? matrixTable(briefing, system) : html`<p>${say.sheet.nothingJudged}</p>`}
    ${pulls(briefing, system)}
    ${
      stops.length === 0
        ? NOTHING
        : html`<h2>${say.sheet.inOrder}</h2>
            <div class="obstacles">
              ${stops.map((stop) => obstacleBlock(stop, outing.direction, system))}
            </div>`
    }
  </section>`;
}

function summary({ outing, trackLengthM, stops }: Briefing, system: System): string {
  const { track, vehicles, direction } = outing;
  return [
    ...(track
      ? [track.name || say.sheet.unnamedTrack, shown(trackLengthM, 'distance', system)]
      : [say.sheet.noTrack]),
    say.sheet.travelled(say.direction[direction]),
    say.sheet.obstacles(stops.length),
    say.sheet.vehicles(vehicles.length),
  ].join(', ');
}

function grade({ grade: told, stops }: Briefing, system: System): Html {
  if (told === null) return NOTHING;
  const nameOf = (id: string) => {
    const stop = stops.find(({ obstacle }) => obstacle.id === id);
    return stop === undefined ? '' : `${stop.number} ${stop.obstacle.name}`;
  };
  return html`<p class="grade"><b>${say.grading.grade}:</b> ${gradeToldText(told, nameOf, system)}</p>`;
}

function mapFigure({ outing, profile, stops }: Briefing, system: System): Html {
  if (outing.track === null || profile === null) return NOTHING;
  const svg = sheetSvg({
    track: outing.track,
    segments: profile.segments,
    pins: stops.map(({ number, obstacle: { lng, lat } }) => ({ number, lng, lat })),
    reversed: outing.direction === 'reversed',
    system,
    widthPx: HALF_PX,
    heightPx: SHEET_PX,
  });
  return html`<figure class="map">
    ${drawing(svg)}
    <figcaption>${say.sheet.mapKey}</figcaption>
  </figure>`;
}

function profileFigure({ outing, profile, stops }: Briefing, system: System): Html {
  const { track } = outing;
  if (track === null || profile === null) return NOTHING;
  const other = otherHeights(track);
  const told = heightsText(track, system);
  const svg = profileSvg({
    profile,
    other: other && slopeOf(track, { from: other }),
    flags: stops.map(({ number, obstacle: { name, stationM } }) => ({
      number,
      name,
      stationM,
      chosen: false,
    })),
    gapsM: Array.from(track.segmentStart.subarray(1), (start) => track.distanceM[start]),
    reversed: outing.direction === 'reversed',
    system,
    widthPx: WIDE_PX,
    heightPx: PROFILE_PX,
  });
  return html`<figure class="long-section">
    ${drawing(svg)} ${told === '' ? NOTHING : html`<figcaption>${told}</figcaption>`}
  </figure>`;
}

function order({ outing: { vehicles, obstacles }, order: { vehicleIds, reasons, unaided } }: Briefing): Html {
  if (vehicles.length === 0) return NOTHING;
  const same = vehicleIds.every((id, i) => vehicles[i].id === id);
  const said = same ? say.sheet.asEntered : say.sheet.otherOrder;
  return html`<h2>${say.sheet.order}</h2>
    <p>${said(unaided, vehicles.length)} ${obstacles.some(canWear) ? say.matrix.wears : ''}</p>
    <ol>
      ${vehicleIds.map((id, i) => {
        const vehicle = vehicles.find((one) => one.id === id);
        return html`<li>
          <b>${vehicle?.name ?? id}</b>${vehicle?.driver ? `, ${vehicle.driver}` : ''}: ${reasons[i]}
        </li>`;
      })}
    </ol>`;
}

/** Who needs what where: who does not pass at all, and a line for each pull. */
function pulls(briefing: Briefing, system: System): Html {
  const { stops } = briefing;
  const pulled = stops.flatMap(({ answers }) => answers.flatMap(({ recovery }) => recovery ?? []));
  const said = pulled.flatMap(({ cautions }) => cautions);
  const often = [...new Set(said.filter((caution, i) => said.indexOf(caution) < i))];
  const needs = stops.flatMap(({ number, obstacle, answers }) =>
    answers.flatMap((answer) =>
      answer.recovery === null
        ? []
        : [
            html`<li>
              <b>${number} ${obstacle.name}, ${answer.vehicle.name}</b>,
              ${say.sheet.about(shown(answer.recovery.pullN, 'force', system))}:
              ${helpText(answer, briefing, often)}
            </li> `,
          ],
    ),
  );
  const halted = stops.flatMap(({ number, answers }) =>
    answers.flatMap(({ vehicle, verdict: { word } }) =>
      word === 'does not go' || word === 'not known'
        ? [say.sheet.haltedAt(vehicle.name, number, say.verdict[word])]
        : [],
    ),
  );
  if (needs.length + halted.length === 0) return NOTHING;
  return html`<h2>${say.sheet.pulls}</h2>
    ${halted.length === 0 ? NOTHING : html`<p class="strong">${say.sheet.halted(halted.join('; '))}</p>`}
    ${
      needs.length === 0
        ? NOTHING
        : html`<ul>
            ${often.length === 0 ? NOTHING : html`<li><b>${say.sheet.moreThanOnce}</b> ${often.join(' ')}</li>`}
            ${needs}
          </ul>`
    }`;
}

/** Offers with their cautions; what is said more than once stands above the list. */
function helpText({ recovery }: Answer, { outing }: Briefing, often: readonly string[]): string {
  if (recovery === null) return '';
  const offers = recovery.offers.map((offer) =>
    [`${offerText(offer, outing.vehicles)}.`, ...offer.cautions].join(' '),
  );
  return (
    [...offers, ...recovery.cautions.filter((caution) => !often.includes(caution))].join(' ') ||
    say.sheet.seeAbove
  );
}
