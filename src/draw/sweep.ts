import type { Band } from '../grade/bands.ts';
import type { OpenBand, Sweep } from '../grade/sweep.ts';
import type { System } from '../units.ts';
import { shown } from '../units.ts';
import type { Point } from './ink.ts';
import { stroke, text } from './ink.ts';
import type { Upright } from './upright.ts';
import { drawn, stationMarks, STATIONS_PX } from './upright.ts';
import { say } from '../words/words.ts';

/** What the offset sweep is drawn from: offset across (left is left), station up the page. */
export interface SweepView {
  readonly sweep: Sweep;
  readonly upright: Upright;
  /** Where the line is, and where along it the vehicle stands. */
  readonly offsetM: number;
  readonly stationM: number;
  /** What a driver misses the line by, either way. */
  readonly errorM: number;
  readonly system: System;
  readonly widthPx: number;
}

/** Margins in their own tolerances at which the tone changes; below the first the line does not go there. */
export const TONES = [0, 1, 2, 4, 7] as const;

export interface SweepScale {
  readonly xOf: (offsetM: number) => number;
  readonly offsetOf: (x: number) => number;
}

export function sweepScale({ sweep, widthPx }: Pick<SweepView, 'sweep' | 'widthPx'>): SweepScale {
  const { offsetM } = sweep;
  const step = stepOf(offsetM);
  const right = offsetM[0] - step / 2;
  const left = offsetM[offsetM.length - 1] + step / 2;
  const pxPerM = (widthPx - STATIONS_PX - 4) / (left - right);
  return {
    xOf: (offset) => STATIONS_PX + (left - offset) * pxPerM,
    offsetOf: (x) => Math.max(right, Math.min(left, left - (x - STATIONS_PX) / pxPerM)),
  };
}

function stepOf(offsetM: Float64Array): number {
  return offsetM.length > 1 ? offsetM[1] - offsetM[0] : 0.2;
}

/** Tone of a margin: −1 where it does not go, then from tight (0) to ample. */
export function toneOf(ease: number): number {
  let tone = -1;
  while (tone + 1 < TONES.length && ease >= TONES[tone + 1]) tone++;
  return tone;
}

/** The nearest limit at every offset and station as tone, the bands that go outlined, as SVG text. */
export function sweepSvg(view: SweepView): string {
  const { sweep, upright, offsetM, stationM, errorM, system, widthPx } = view;
  const { xOf } = sweepScale(view);
  const { yOf, heightPx } = upright;
  const from = sweep.stationM[0];
  const to = sweep.stationM[sweep.stationM.length - 1];
  const [low, high] = [yOf(from), yOf(to)];
  const bands = (sweep.bands ?? []).map(({ fromM, toM }) => {
    const [a, b] = [xOf(toM), xOf(fromM)];
    return (
      stroke(
        'band',
        [
          [a, high],
          [Math.max(b, a + 1), high],
          [Math.max(b, a + 1), low],
          [a, low],
        ],
        true,
      ) +
      stroke('band-name', [
        [a, high - 3],
        [Math.max(b, a + 1), high - 3],
      ])
    );
  });
  const x = xOf(offsetM);
  const y = yOf(stationM);
  const [left, right] = [xOf(offsetM + errorM), xOf(offsetM - errorM)];
  const parts = [
    ...cells(sweep, xOf, yOf),
    stroke(
      'frame',
      [
        [xOf(sweep.offsetM[0] - stepOf(sweep.offsetM) / 2), high],
        [STATIONS_PX, high],
        [STATIONS_PX, low],
        [xOf(sweep.offsetM[0] - stepOf(sweep.offsetM) / 2), low],
      ],
      true,
    ),
    ...bands,
    stroke('centre', [
      [xOf(0), high],
      [xOf(0), low],
    ]),
    stroke('offset', [
      [x, high],
      [x, low],
    ]),
    stroke('scrub', [
      [STATIONS_PX, y],
      [widthPx - 4, y],
    ]),
    stroke('error', [
      [left, y],
      [right, y],
    ]),
    stroke('error', [
      [left, y - 5],
      [left, y + 5],
    ]),
    stroke('error', [
      [right, y - 5],
      [right, y + 5],
    ]),
    stationMarks(upright, 0, system),
    text('title', [(STATIONS_PX + widthPx) / 2, 14], say.drawing.movedSideways),
    text('station', [(STATIONS_PX + widthPx) / 2, 32], offsetText(offsetM, system)),
  ];
  return drawn('sweep', widthPx, heightPx, parts);
}

/** Such as `0.40 m left`; `on the main line` where it is. */
export function offsetText(offsetM: number, system: System): string {
  if (Math.abs(offsetM) < 0.005) return say.ground.onMain;
  return say.ground[offsetM > 0 ? 'left' : 'right'](shown(Math.abs(offsetM), 'length', system));
}

/** Such as `0.40 m left to 0.70 m left, best 0.50 m left`; a band without width is one place. */
export function placesText({ fromM, toM, bestM }: Band, system: System): string {
  const [from, to] = [offsetText(fromM, system), offsetText(toM, system)];
  return from === to
    ? from
    : `${say.ground.between(from, to)}, ${say.ground.best(offsetText(bestM, system))}`;
}

/** The same with the track widths that it is open to. */
export function bandText(band: OpenBand, system: System): string {
  const open =
    band.tracks === null
      ? ''
      : say.ground.openTo(
          shown(band.tracks.fromM, 'length', system),
          shown(band.tracks.toM, 'length', system),
        );
  return [placesText(band, system), open].filter(Boolean).join(', ');
}

/** Runs of one tone up each offset; what does not go is hatched over its tone. */
function cells(sweep: Sweep, xOf: (offset: number) => number, yOf: (station: number) => number): string[] {
  const { offsetM, stationM, ease } = sweep;
  const step = stepOf(offsetM);
  const rise = stationM.length > 1 ? stationM[1] - stationM[0] : 0.1;
  const shapes = new Map<number, string>();
  const hatch: string[] = [];
  for (let i = 0; i < offsetM.length; i++) {
    const [a, b] = [xOf(offsetM[i] + step / 2), xOf(offsetM[i] - step / 2)];
    for (let k = 0; k < stationM.length;) {
      const tone = toneOf(ease[i * stationM.length + k]);
      let end = k;
      while (end + 1 < stationM.length && toneOf(ease[i * stationM.length + end + 1]) === tone) end++;
      const top = yOf(Math.min(stationM[end] + rise / 2, stationM[stationM.length - 1]));
      const bottom = yOf(Math.max(stationM[k] - rise / 2, stationM[0]));
      const r = (value: number) => String(Number(value.toFixed(1)));
      shapes.set(tone, `${shapes.get(tone) ?? ''}M${r(a)} ${r(top)}H${r(b)}V${r(bottom)}H${r(a)}Z`);
      if (tone < 0) hatch.push(hatchOf(a, b, top, bottom));
      k = end + 1;
    }
  }
  const tones = [...shapes]
    .toSorted((p, q) => p[0] - q[0])
    .map(([tone, d]) => `<path class="${tone < 0 ? 'tone no' : `tone tone-${tone}`}" d="${d}"/>`);
  return hatch.length === 0 ? tones : [...tones, `<path class="no-hatch" d="${hatch.join('')}"/>`];
}

/** Slanted strokes over a box, on one lattice for all boxes. */
function hatchOf(a: number, b: number, top: number, bottom: number): string {
  const apart = 7;
  let d = '';
  for (let c = Math.ceil((a + top) / apart) * apart; c < b + bottom; c += apart) {
    const start: Point = [Math.max(a, c - bottom), 0];
    const end: Point = [Math.min(b, c - top), 0];
    if (end[0] <= start[0]) continue;
    d += `M${start[0].toFixed(1)} ${(c - start[0]).toFixed(1)}L${end[0].toFixed(1)} ${(c - end[0]).toFixed(1)}`;
  }
  return d;
}
