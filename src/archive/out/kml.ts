import type { Contents, OutPath, OutPlace, OutWay } from './contents.ts';
import { decimalText, xmlElement } from './xmlText.ts';
import { say } from '../../words/words.ts';

/** Stroke of each kind of way: opaque colour as aabbggrr, and width in pixels. */
const STROKES: Readonly<Record<OutWay['kind'], readonly [colour: string, widthPx: number]>> = {
  track: ['ff2e2315', 3],
  route: ['ff2e2315', 3],
  main: ['ff581a8a', 4],
  offset: ['ff581a8a', 2],
  bypass: ['ffa8793b', 3],
};

/** KML 2.2 (OGC 07-147r2): a document with a folder for places and one for ways, all on the ground. */
export function kmlText({ name, description, places, ways }: Contents): string {
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    '<kml xmlns="http://www.opengis.net/kml/2.2">',
    `<Document>${xmlElement('name', name)}${balloon(description)}`,
    ...Object.entries(STROKES).map(
      ([kind, [colour, widthPx]]) =>
        `<Style id="${kind}"><LineStyle><color>${colour}</color><width>${widthPx}</width></LineStyle></Style>`,
    ),
    folder(say.exports.places, places.map(placemark)),
    folder(say.exports.ways, ways.map(way)),
    '</Document>',
    '</kml>\n',
  ].join('\n');
}

function folder(name: string, features: readonly string[]): string {
  return [`<Folder>${xmlElement('name', name)}`, ...features, '</Folder>'].join('\n');
}

function placemark({ name, description, lng, lat, elevationM }: OutPlace): string {
  return `<Placemark>${xmlElement('name', name)}${balloon(description)}<Point><coordinates>${position(lng, lat, elevationM)}</coordinates></Point></Placemark>`;
}

function way({ kind, name, description, paths }: OutWay): string {
  const lines = paths.map(lineString);
  const geometry = lines.length === 1 ? lines[0] : `<MultiGeometry>${lines.join('')}</MultiGeometry>`;
  return `<Placemark>${xmlElement('name', name)}${balloon(description)}<styleUrl>#${kind}</styleUrl>${geometry}</Placemark>`;
}

function lineString({ lng, lat, elevationM }: OutPath): string {
  const at = Array.from(lng, (x, i) => position(x, lat[i], elevationM?.[i] ?? NaN));
  // A segment of one point is a place that was stood at; a line needs two.
  const tuples = at.length === 1 ? [at[0], at[0]] : at;
  return `<LineString><tessellate>1</tessellate><coordinates>${tuples.join(' ')}</coordinates></LineString>`;
}

/** Longitude, latitude, and height above sea level where it is known. */
function position(lng: number, lat: number, elevationM: number): string {
  const numbers = Number.isFinite(elevationM) ? [lng, lat, elevationM] : [lng, lat];
  return numbers.map(decimalText).join(',');
}

/** Readers show a description as HTML, so what a person typed is escaped for that first. */
function balloon(description: string): string {
  const asHtml = description.replace(/[&<>"']/g, (c) => `&#${c.charCodeAt(0)};`);
  return xmlElement('description', asHtml);
}
