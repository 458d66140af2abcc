import type { Spot, ToldValue } from '../archive/spot.ts';
import { shown, toShown, unitLabel, written } from '../units.ts';
import type { System } from '../units.ts';
import { say } from '../words/words.ts';
import { dayOf } from './dayText.ts';

/** What a value belongs to and how it is called, from the obstacle inwards: `North step, visit of 4 May 2025, rut 1, depth`. */
export function spotText(spot: Spot): string {
  return [...placeWords(spot), fieldWords(spot)].filter((word) => word !== '').join(', ');
}

function placeWords({ of, obstacleId, obstacleName, name, atMs, feature }: Spot): string[] {
  const words = say.gradedTracks.spot;
  const day = atMs === null ? '?' : dayOf(atMs);
  const inner = {
    track: '',
    obstacle: '',
    line: words.line(name),
    photo: words.photo(name),
    visit: words.visit(day),
    outcome: words.outcome(day),
  }[of];
  const outer = obstacleId === null ? '' : obstacleName || say.gradedTracks.unnamedObstacle;
  return [outer, inner, feature === null ? '' : words.feature(say.feature[feature.kind], feature.number)];
}

function fieldWords({ field, table }: Spot): string {
  if (table !== null) return say.fields.within(table.label);
  const { fields } = say.gradedTracks.spot;
  return field in fields ? fields[field as keyof typeof fields] : field;
}

/** A value as a person reads it, with its unit and how it was got. */
export function valueText({ field, table }: Spot, { value, how }: ToldValue, system: System): string {
  const words = [plainText(field, table, value, system), how === null ? '' : say.how[how]];
  return words.filter((word) => word !== '').join(', ');
}

function plainText(field: string, table: Spot['table'], value: unknown, system: System): string {
  const words = say.gradedTracks.spot;
  if (value instanceof Uint8Array) return words.image;
  if (field === 'there') return value === true ? words.there : words.gone;
  if (value === null || value === undefined) return say.verdict['not known'];
  if (typeof value === 'number') {
    if (field === 'atMs') return dayOf(value);
    if (table?.kind !== 'number') return String(value);
    const unit = unitLabel(table.quantity, system);
    return `${written(String(toShown(value, table.quantity, system)))}${unit === '°' ? '' : ' '}${unit}`.trim();
  }
  if (field === 'kind' && typeof value === 'string' && value in say.feature)
    return say.feature[value as keyof typeof say.feature];
  if (typeof value === 'string') return wordText(table, value) || words.empty;
  if (field === 'place' && isPlace(value)) {
    const [lng, lat, stationM] = value;
    return `${short(lat)}°, ${short(lng)}°, ${shown(stationM, 'distance', system)}`;
  }
  if (Array.isArray(value))
    return value.every((one) => typeof one === 'number')
      ? value.map(short).join(', ')
      : words.many(value.length);
  return objectText(value);
}

function wordText(table: Spot['table'], value: string): string {
  if (table?.kind === 'choice' && value in say.choice) return say.choice[value as keyof typeof say.choice];
  for (const shown of [say.outcome, say.verdict, say.rung, say.direction, say.lineKind])
    if (value in shown) return (shown as Readonly<Record<string, string>>)[value];
  return value;
}

/** What is too large to be told whole is told by its name, or by how much of it there is. */
function objectText(value: object): string {
  const record = value as Readonly<Record<string, unknown>>;
  if (typeof record.name === 'string' && record.name !== '') return record.name;
  return Array.isArray(record.lng)
    ? say.gradedTracks.spot.trackOf(record.lng.length)
    : say.gradedTracks.spot.many(Object.keys(value).length);
}

/** Longitude, latitude and station, as the record holds them together. */
function isPlace(value: unknown): value is [number, number, number] {
  return Array.isArray(value) && value.length === 3 && value.every((one) => typeof one === 'number');
}

function short(value: number): string {
  return written(String(Math.round(value * 1e5) / 1e5));
}
