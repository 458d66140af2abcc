import { markSvg } from '../draw/mark.ts';
import { sketchSvg } from '../draw/sketch.ts';
import { tellingStationM } from '../draw/stance.ts';
import type { Direction } from '../terrain/obstacle.ts';
import type { System } from '../units.ts';
import { shown } from '../units.ts';
import { vehicleFields } from '../vehicle/specs.ts';
import type { Answer, Briefing, Call, Card, Stop } from './brief.ts';
import { descentText, geared, ON_THE_WAY_DOWN, stabilityText } from './descentText.ts';
import type { Html } from './html.ts';
import { NOTHING, drawing, html } from './html.ts';
import { lineCall } from './lineText.ts';
import type { StoppedOn } from './stopped.ts';
import { IF_IT_STOPS } from './stopped.ts';
import { demandText, engagedText, goesSomehow, limitText } from './verdictText.ts';
import { say } from '../words/words.ts';

const SKETCH_PX = 140;
/** More estimated values than this are only counted. */
const MOST_NAMED = 4;

/** What one driver keeps on the dashboard: each obstacle in order of travel, in one line where nothing is asked. */
export function driverCard(card: Card, place: number, briefing: Briefing, system: System): Html {
  const { vehicle, calls } = card;
  const { outing } = briefing;
  const estimated = vehicle.estimated.map((name) => say.fields.within(vehicleFields[name].label));
  return html`<article class="card">
    ${outing.radioChannel === '' ? NOTHING : html`<p class="radio"><b>${say.track.radioChannel}:</b> ${outing.radioChannel}</p>`}
    <h3>
      ${place} ${vehicle.name}${vehicle.driver === '' ? '' : `, ${vehicle.driver}`}
      (${say.vehicleClass[vehicle.vehicleClass]})
    </h3>
    ${outing.note === '' ? NOTHING : html`<p class="note">${outing.note}</p>`}
    ${
      calls.length === 0
        ? NOTHING
        : html`<div class="calls">
            ${calls.map((call) => (call.isPlain ? plainLine(call, system) : callBlock(call, briefing, system)))}
          </div>`
    }
    ${calls.some(({ isPlain }) => isPlain) ? html`<p>${say.cards.asItComes}</p>` : NOTHING}
    ${goesDown(card, system) ? html`<p><b>${say.cards.wayDown}</b> ${[ON_THE_WAY_DOWN, stabilityText(vehicle.values)].filter(Boolean).join(' ')}</p>` : NOTHING}
    ${usedIn(calls).map((on) => html`<p><b>${say.cards.ifItStopsOn(say.driving.stoppedOn[on])}</b> ${IF_IT_STOPS[on]}</p>`)}
    <p>
      ${say.cards.walkFirst}
      ${estimated.length === 0 ? '' : say.cards.estimated(estimated.length > MOST_NAMED ? say.cards.manyValues(estimated.length) : estimated.join(', '))}
    </p>
  </article> `;
}

/** One obstacle: its line in a sketch, what to engage before it, how fast, where the spotter stands. */
function callBlock({ stop, answer }: Call, briefing: Briefing, system: System): Html {
  const { verdict, spotter, stoppedOn } = answer;
  const somehow = goesSomehow(verdict.word);
  return html`<div class="call ${somehow ? 'asks' : 'halt'}">
    ${somehow ? sketch(answer) : NOTHING}
    <h4>${whereText(stop, system)}</h4>
    <p>
      ${drawing(markSvg(verdict.word, 20))}
      <b>${say.verdict[verdict.word]}</b>${somehow ? '' : say.cards.stopBefore(limitText(verdict))}
    </p>
    ${
      somehow
        ? html`<p>${doing(answer, briefing.outing.direction, system)}.</p>
            ${helper(answer, briefing, system)}
            <p>
              <b>${say.cards.spotter}</b> ${spotter.text}.
              <b>${say.cards.ifItStops}</b> ${stoppedOn.map((on) => say.driving.stoppedOn[on]).join(', ')}.
            </p>`
        : NOTHING
    }
  </div>`;
}

/** An obstacle of which nothing is to be known but that it counts. */
function plainLine({ stop, answer: { verdict } }: Call, system: System): Html {
  return html`<h4 class="call plain">
    ${drawing(markSvg(verdict.word, 16))} ${whereText(stop, system)}
    <span class="at">${say.rung['as it comes']}</span>
  </h4>`;
}

function whereText({ number, obstacle, distanceM }: Stop, system: System): Html {
  return html`${number} ${obstacle.name} <span class="at">${shown(distanceM, 'distance', system)}</span>`;
}

/** Line, aids, speed, how to go down, and what to watch. */
function doing({ verdict, line, vehicle }: Answer, direction: Direction, system: System): string {
  const speed = verdict.word === 'needs momentum' ? demandText(verdict, system) : '';
  const care = verdict.word === 'goes' ? '' : limitText(verdict);
  const down = descentText(verdict, vehicle.values, system);
  const engaged = engagedText(down === '' ? verdict : { ...verdict, rung: geared(verdict).rung });
  return [lineCall(line, direction, system), engaged, speed, down, care].filter(Boolean).join('; ');
}

function helper({ recovery }: Answer, { outing }: Briefing, system: System): Html {
  if (recovery === null) return NOTHING;
  const [first] = recovery.offers;
  const name = outing.vehicles.find(({ id }) => id === first?.vehicleId)?.name;
  const words =
    name === undefined
      ? say.cards.nobody
      : first.means === 'own winch'
        ? say.cards.ownWinch
        : say.cards.helper(name, say.recovery.by[first.means]);
  return html`<p>
    <b>${say.cards.pull}</b> ${say.cards.pullOf(shown(recovery.pullN, 'force', system), words)}
  </p>`;
}

function sketch({ stretch, offsetM, vehicle, verdict }: Answer): Html {
  if (verdict.word === 'not known') return NOTHING;
  const stationM = tellingStationM(stretch.features);
  return drawing(sketchSvg({ stretch, stationM, offsetM, vehicle: vehicle.values, widthPx: SKETCH_PX }));
}

/** Whether this driver is told of a descent. */
function goesDown({ calls }: Card, system: System): boolean {
  return calls.some(
    ({ answer: { verdict, vehicle } }) =>
      goesSomehow(verdict.word) && descentText(verdict, vehicle.values, system) !== '',
  );
}

/** Kinds of place where this driver may have to stop, in the order of `IF_IT_STOPS`. */
function usedIn(calls: Card['calls']): StoppedOn[] {
  const asked = calls.filter(({ answer, isPlain }) => !isPlain && goesSomehow(answer.verdict.word));
  const used = new Set(asked.flatMap(({ answer }) => answer.stoppedOn));
  return (Object.keys(IF_IT_STOPS) as StoppedOn[]).filter((on) => used.has(on));
}
