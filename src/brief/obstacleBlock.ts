import { sectionSvg } from '../draw/section.ts';
import { tellingStationM } from '../draw/stance.ts';
import type { FeatureKind } from '../terrain/feature.ts';
import type { Direction, Line } from '../terrain/obstacle.ts';
import type { System } from '../units.ts';
import { shown } from '../units.ts';
import type { Stop } from './brief.ts';
import { groundText, shapesText } from './groundText.ts';
import type { Html } from './html.ts';
import { NOTHING, drawing, html } from './html.ts';
import { lineCall, openText } from './lineText.ts';
import { say } from '../words/words.ts';

const SECTION_PX = 310;

/** One obstacle for the leader: the ground in words and in a cut, its lines, and what to measure again. */
export function obstacleBlock(stop: Stop, direction: Direction, system: System): Html {
  const { number, obstacle, distanceM, doubts, byEye } = stop;
  const others = obstacle.lines.filter(({ kind }) => kind !== 'main');
  const lineWords = (line: Line) => {
    const open = openText(stop.open.get(line.id) ?? null, system);
    return `${lineCall(line, direction, system)}${open && ` (${open})`}`;
  };
  const words = [
    groundText(stop.stretch, stop.slope, system),
    shapesText(stop.stretch, system),
    others.length === 0 ? '' : say.sheet.lines(others.map(lineWords).join('; ')),
    byEye.values === 0 ? '' : say.sheet.byEye(byEye.values, byEye.of),
  ].filter(Boolean);
  return html`<article class="obstacle">
    <h3>${number} ${obstacle.name}, ${shown(distanceM, 'distance', system)}</h3>
    ${section(stop, system)}
    <p>${words.join('. ')}.</p>
    ${obstacle.note === '' ? NOTHING : html`<p class="note">${obstacle.note}</p>`}
    ${doubts.length === 0 ? NOTHING : html`<p class="strong">${say.sheet.measureAgain(doubts.map(({ what }) => what).join(' '))}</p>`}
  </article> `;
}

/** Shapes whose sizes a cut across tells best; rocks are told in words, and what lies across shows as a level line. */
const SEEN_ACROSS: readonly FeatureKind[] = ['rut', 'hole', 'bank'];

/** Nothing where a cut across tells nothing, or where a size is not known. */
function section({ stretch }: Stop, system: System): Html {
  const shapes = stretch.features.filter(({ kind }) => SEEN_ACROSS.includes(kind));
  if (shapes.length === 0 || Number.isNaN(stretch.lengthM)) return NOTHING;
  const stationM = tellingStationM(shapes);
  const view = { stretch, stationM, offsetM: 0, vehicle: null, system, widthPx: SECTION_PX };
  return html`<figure>${drawing(sectionSvg(view))}</figure>`;
}
