import type { FieldTable } from '../field.ts';
import { choice, number } from '../field.ts';
import { READ_LIMITS } from '../route/limits.ts';

/** The parts of a trip that have no table where they are declared: what a trip file adds to ground and vehicle. */
export const tripFields = {
  direction: choice(
    'Direction',
    ['as recorded', 'reversed'],
    'Which way the convoy travels the recorded track.',
  ),
} satisfies FieldTable;

export const trackFields = {
  kind: choice('Kind', ['track', 'route'], 'A track was recorded, a route was planned.'),
} satisfies FieldTable;

export const placeFields = {
  lng: number('Longitude', 'number', -180, 180, 'WGS 84 degrees, east positive.'),
  lat: number('Latitude', 'number', -90, 90, 'WGS 84 degrees, north positive.'),
} satisfies FieldTable;

export const elevationFields = {
  elevationM: number(
    'Elevation',
    'length',
    READ_LIMITS.lowestM,
    READ_LIMITS.highestM,
    'Above mean sea level; null where unknown.',
  ),
} satisfies FieldTable;

export const stationFields = {
  stationM: number(
    'Station',
    'distance',
    0,
    40_000_000,
    'Along the track from its first point; gaps add nothing.',
  ),
} satisfies FieldTable;

export const offsetFields = {
  offsetM: number('Offset', 'length', -30, 30, 'Tape sideways from the main line; left is positive.'),
} satisfies FieldTable;
