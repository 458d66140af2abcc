import { markSvg } from '../draw/mark.ts';
import type { VerdictWord } from '../grade/verdict.ts';
import { offsetOf } from '../grade/verdict.ts';
import type { Direction, Line } from '../terrain/obstacle.ts';
import type { System } from '../units.ts';
import { shown } from '../units.ts';
import type { Answer, Briefing } from './brief.ts';
import type { Html } from './html.ts';
import { drawing, html } from './html.ts';
import { lineCall } from './lineText.ts';
import { engagedText, goesSomehow, sureText } from './verdictText.ts';
import { say } from '../words/words.ts';

/** So often of a hundred is not worth a line in every cell. */
const ALWAYS = 100;

/** Obstacles down in order of travel, vehicles across in convoy order: mark, word, and what it takes. */
export function matrixTable({ outing, stops, cards }: Briefing, system: System): Html {
  const { direction } = outing;
  const surely = stops.every(({ answers }) => answers.every(isSure));
  return html`<table class="matrix">
      <thead>
        <tr>
          <th scope="col">${say.sheet.obstacle}</th>
          ${cards.map(({ vehicle }, i) => html`<th scope="col">${i + 1} ${vehicle.name}</th>`)}
        </tr>
      </thead>
      <tbody>
        ${stops.map(
          ({ number, obstacle, answers }) =>
            html`<tr>
              <th scope="row">${number} ${obstacle.name}</th>
              ${answers.map((answer) => matrixCell(answer, obstacle.lines, surely, direction, system))}
            </tr> `,
        )}
      </tbody>
    </table>
    <p>${say.sheet.elseAsItComes} ${surely ? say.sheet.howOften : ''}</p>`;
}

function matrixCell(
  { verdict, line, goesIn }: Answer,
  lines: readonly Line[],
  surely: boolean,
  direction: Direction,
  system: System,
): Html {
  const { word } = verdict;
  const somehow = goesSomehow(word);
  const how = somehow
    ? [
        word === 'needs momentum' ? say.margins.atLeast(shown(verdict.entrySpeedMps, 'speed', system)) : '',
        verdict.rung.name === 'as it comes' ? '' : engagedText(verdict),
        lineWords(line, lines, direction, system),
      ].filter(Boolean)
    : [];
  const sure = surely && isGoing(word) ? sureText(goesIn) : '';
  const look = word === 'goes' ? 'plain' : somehow ? 'asks' : 'halt';
  return html`<td class="${look}">
    ${drawing(markSvg(word, 20))}
    <span class="word">${say.verdict[word]}</span
    >${sure === '' || sure === say.margins.outOfHundred(ALWAYS) ? '' : `, ${sure}`}${how.length === 0 ? '' : `: ${how.join('; ')}`}
  </td>`;
}

function isGoing(word: VerdictWord): boolean {
  return word === 'goes' || word === 'goes with care';
}

/** Whether it was asked how often it goes, where that is worth saying. */
function isSure({ verdict, goesIn }: Answer): boolean {
  return !isGoing(verdict.word) || goesIn !== null;
}

/** Nothing for the main line, and no name where there is only one bypass. */
function lineWords(line: Line, lines: readonly Line[], direction: Direction, system: System): string {
  if (line.kind === 'main') return '';
  if (line.kind === 'bypass' && lines.filter(({ kind }) => kind === 'bypass').length === 1)
    return say.sheet.bypass;
  if (line.kind === 'bypass') return lineCall(line, direction, system);
  const leftM = offsetOf(line, direction);
  return say.ground[leftM > 0 ? 'left' : 'right'](shown(Math.abs(leftM), 'size', system));
}
