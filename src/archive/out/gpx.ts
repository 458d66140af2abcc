import { wrapLng } from '../../route/ellipsoid.ts';
import type { Contents, OutPath, OutPlace, OutWay } from './contents.ts';
import { decimalText, xmlElement } from './xmlText.ts';

/** GPX 1.1 (2004): obstacles and waypoints, what was recorded with its segments, and each line as a track of its own. */
export function gpxText({ name, description, places, ways }: Contents): string {
  const planned = ways.filter(({ kind }) => kind === 'route');
  const driven = ways.filter(({ kind }) => kind !== 'route');
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    '<gpx xmlns="http://www.topografix.com/GPX/1/1" version="1.1" creator="Rutline">',
    `<metadata>${xmlElement('name', name)}${xmlElement('desc', description)}</metadata>`,
    ...places.map(waypoint),
    ...planned.map(route),
    ...driven.map(track),
    '</gpx>\n',
  ].join('\n');
}

function waypoint({ name, description, lng, lat, elevationM }: OutPlace): string {
  return `<wpt ${position(lng, lat)}>${elevation(elevationM)}${xmlElement('name', name)}${xmlElement('desc', description)}</wpt>`;
}

function route(way: OutWay): string {
  const points = way.paths.map((path) => pointsOf('rtept', path));
  return `<rte>${said(way)}\n${points.join('\n')}\n</rte>`;
}

function track(way: OutWay): string {
  const segments = way.paths.map((path) => `<trkseg>\n${pointsOf('trkpt', path)}\n</trkseg>`);
  return `<trk>${said(way)}\n${segments.join('\n')}\n</trk>`;
}

function said({ name, description }: OutWay): string {
  return xmlElement('name', name) + xmlElement('desc', description);
}

function pointsOf(tag: string, { lng, lat, elevationM, timeS }: OutPath): string {
  return Array.from(lng, (x, i) => {
    const inside = elevation(elevationM?.[i] ?? NaN) + time(timeS?.[i] ?? NaN);
    const open = `<${tag} ${position(x, lat[i])}`;
    return inside === '' ? `${open}/>` : `${open}>${inside}</${tag}>`;
  }).join('\n');
}

/** Longitudes lie in [-180, 180): the schema excludes 180. */
function position(lng: number, lat: number): string {
  return `lat="${decimalText(lat)}" lon="${decimalText(wrapLng(lng))}"`;
}

function elevation(elevationM: number): string {
  return Number.isFinite(elevationM) ? `<ele>${decimalText(elevationM)}</ele>` : '';
}

function time(timeS: number): string {
  const date = new Date(Math.round(timeS * 1000));
  return Number.isNaN(date.getTime()) ? '' : `<time>${date.toISOString().replace('.000Z', 'Z')}</time>`;
}
