/** A point of a drawing, in its pixels: x to the right, y down. */
export type Point = readonly [x: number, y: number];

/** The strokes that survey drawings are made of, as SVG text. Classes are inked by the page that shows them. */

const TICK = 4;

const [LEAST, MOST] = [4_096, 16_384];
/** Tenths of a pixel as they are written, from `-LEAST` on: the same few thousand are written again and again. */
const tenthsWritten = new Array<string | undefined>(LEAST + MOST);

/** To a tenth. */
export function n(value: number): string {
  const tenths = Math.round(value * 10) + 0;
  if (!(tenths >= -LEAST && tenths < MOST)) return String(tenths / 10);
  return (tenthsWritten[tenths + LEAST] ??= String(tenths / 10));
}

export function escaped(text: string): string {
  return text.replace(/[&<>"]/g, (c) => ({ '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' })[c] ?? c);
}

export function pathOf(points: readonly Point[], closed = false): string {
  let d = '';
  for (const point of points) d += `${d === '' ? 'M' : 'L'}${n(point[0])} ${n(point[1])}`;
  return closed ? `${d}Z` : d;
}

export function stroke(className: string, points: readonly Point[], closed = false): string {
  return `<path class="${className}" d="${pathOf(points, closed)}"/>`;
}

/** Many strokes of one class as one: a picture that is redrawn while a hand moves must have few parts. */
export function strokes(className: string, lines: readonly (readonly Point[])[], closed = false): string {
  if (lines.length === 0) return '';
  return `<path class="${className}" d="${lines.map((line) => pathOf(line, closed)).join('')}"/>`;
}

export function text(
  className: string,
  [x, y]: Point,
  words: string,
  anchor: 'start' | 'middle' | 'end' = 'middle',
): string {
  return `<text class="${className}" x="${n(x)}" y="${n(y)}" text-anchor="${anchor}">${escaped(words)}</text>`;
}

/** A dimension line between two points with slanted ticks and its words, if any, beside the middle, `side` pixels off (positive: to the right of travel from a to b). */
export function dimension(a: Point, b: Point, words: string, side: number): string {
  const dx = b[0] - a[0];
  const dy = b[1] - a[1];
  const length = Math.hypot(dx, dy) || 1;
  const [ux, uy] = [dx / length, dy / length];
  const tick = ([x, y]: Point): Point[] => [
    [x - TICK, y + TICK],
    [x + TICK, y - TICK],
  ];
  const middle: Point = [(a[0] + b[0]) / 2 - uy * side, (a[1] + b[1]) / 2 + ux * side + 4];
  const upright = Math.abs(uy) > 0.7;
  const anchor = upright ? (-uy * side > 0 ? 'start' : 'end') : 'middle';
  return (
    `<g class="dimension">${stroke('rule', [a, b])}${stroke('tick', tick(a))}${stroke('tick', tick(b))}` +
    `${words && text('size', middle, words, anchor)}</g>`
  );
}

/** The short slanted strokes under a surface that mark cut ground, one every `apart` pixels of its length. */
export function hatching(surface: readonly Point[], apart: number, size: number): string {
  let d = '';
  let left = apart / 2;
  for (let i = 1; i < surface.length; i++) {
    const [x0, y0] = surface[i - 1];
    const [x1, y1] = surface[i];
    const length = Math.hypot(x1 - x0, y1 - y0);
    for (; left <= length; left += apart) {
      const t = left / length;
      const x = x0 + (x1 - x0) * t;
      const y = y0 + (y1 - y0) * t;
      d += `M${n(x)} ${n(y + 1.5)}l${n(-size)} ${n(size)}`;
    }
    left -= length;
  }
  return `<path class="hatching" d="${d}"/>`;
}
