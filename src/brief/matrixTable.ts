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
import { matrixParts } from './matrixColumns.ts';
import { engagedText, goesSomehow, sureText } from './verdictText.ts';
import { parted } from './wordWidth.ts';
import { say } from '../words/words.ts';

/** So often of a hundred is not worth a line in every cell. */
const ALWAYS = 100;

/**
 * Obstacles down in order of travel, vehicles across in convoy order: mark, word, and what it takes. Where they do not all
 * fit across the page, more tables follow with the obstacles repeated.
 */
export function matrixTable({ outing, stops, cards }: Briefing, system: System): Html {
  const surely = stops.every(({ answers }) => answers.every(isSure));
  const names = stops.map(({ number, obstacle }) => `${number} ${obstacle.name}`);
  const vehicles = cards.map(({ vehicle }, i) => `${i + 1} ${vehicle.name}`);
  const cells = stops.map(({ obstacle, answers }) =>
    answers.map((answer) => takes(answer, obstacle.lines, surely, outing.direction, system)),
  );
  const parts = matrixParts(
    { bold: [say.sheet.obstacle, ...names], regular: [] },
    vehicles.map((name, v) => ({
      bold: [name, ...stops.map(({ answers }) => `${say.verdict[answers[v].verdict.word]},`)],
      regular: cells.map((row) => row[v]),
    })),
  );
  return html`${parts.map(
      ({ from, to, shares }) =>
        html`<table class="matrix">
          <colgroup>
            ${shares.map((share) => html`<col width="${(100 * share).toFixed(2)}%" />`)}
          </colgroup>
          <thead>
            <tr>
              <th scope="col">${say.sheet.obstacle}</th>
              ${vehicles.slice(from, to).map((name) => html`<th scope="col">${parted(name)}</th>`)}
            </tr>
          </thead>
          <tbody>
            ${stops.map(
              ({ answers }, s) =>
                html`<tr>
                  <th scope="row">${parted(names[s])}</th>
                  ${answers.slice(from, to).map((answer, i) => matrixCell(answer, cells[s][from + i]))}
                </tr> `,
            )}
          </tbody>
        </table> `,
    )}
    <p>${say.sheet.elseAsItComes} ${surely ? say.sheet.howOften : ''}</p>`;
}

function matrixCell({ verdict: { word } }: Answer, what: string): Html {
  const look = word === 'goes' ? 'plain' : goesSomehow(word) ? 'asks' : 'halt';
  return html`<td class="${look}">
    ${drawing(markSvg(word, 20))} <span class="word">${say.verdict[word]}</span>${parted(what)}
  </td>`;
}

/** What follows the word of a verdict: how surely, and what it takes. */
function takes(
  { verdict, line, goesIn }: Answer,
  lines: readonly Line[],
  surely: boolean,
  direction: Direction,
  system: System,
): string {
  const { word } = verdict;
  const how = goesSomehow(word)
    ? [
        word === 'needs momentum' ? say.margins.atLeast(shown(verdict.entrySpeedMps, 'speed', system)) : '',
        verdict.rung.name === 'as it comes' ? '' : engagedText(verdict),
        lineWords(line, lines, direction, system),
      ].filter(Boolean)
    : [];
  const sure = surely && isGoing(word) ? sureText(goesIn) : '';
  return [
    sure === '' || sure === say.margins.outOfHundred(ALWAYS) ? '' : `, ${sure}`,
    how.length === 0 ? '' : `: ${how.join('; ')}`,
  ].join('');
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
