import type { Levels } from '../trackRow.ts';
import type { Crowd, PublishedRow } from './published.ts';
import { CROWD_STEPS } from './published.ts';
import { boxOfTile, tileOf } from './webTile.ts';

/** Letters of a name or an area that are kept. */
const TEXT_LENGTH = 300;

/** A row out of a tile of anybody's, whatever is in it; null where it names no track. */
export function rowFrom(value: unknown): PublishedRow | null {
  const row = (value ?? {}) as Partial<Record<keyof PublishedRow, unknown>>;
  const { id, name, area, box, record, hash } = row;
  if (typeof id !== 'string' || typeof name !== 'string' || typeof area !== 'string') return null;
  if (!areNumbers(box, 4) || !areNumbers(record, 2) || !record.every(isCount)) return null;
  const [west, south, east, north] = box;
  return {
    id,
    name: name.slice(0, TEXT_LENGTH),
    area: area.slice(0, TEXT_LENGTH),
    box: [west, south, east, north],
    lengthM: isNumber(row.lengthM) && row.lengthM > 0 ? row.lengthM : 0,
    obstacleCount: isCount(row.obstacleCount) ? row.obstacleCount : 0,
    lastVisitMs: isNumber(row.lastVisitMs) ? row.lastVisitMs : null,
    levels: levelsFrom(row.levels),
    record: [record[0], record[1]],
    hash: typeof hash === 'string' ? hash : null,
  };
}

/** A crowd out of a tile of some zoom; null where it is none. */
export function crowdFrom(value: unknown, zoom: number): Crowd | null {
  if (!Array.isArray(value)) return null;
  const [count, lng, lat, name] = value as unknown[];
  if (!isCount(count) || !isNumber(lng) || !isNumber(lat) || typeof name !== 'string') return null;
  const part = zoom + CROWD_STEPS;
  return { count, lng, lat, name: name.slice(0, TEXT_LENGTH), box: boxOfTile(tileOf(lng, lat, part), part) };
}

function levelsFrom(value: unknown): Levels {
  const entries = Object.entries((value ?? {}) as Record<string, unknown>);
  return Object.fromEntries(
    entries.filter((entry): entry is [string, string | number] =>
      ['string', 'number'].includes(typeof entry[1]),
    ),
  );
}

function areNumbers(list: unknown, count: number): list is number[] {
  return Array.isArray(list) && list.length === count && list.every(isNumber);
}

function isNumber(value: unknown): value is number {
  return typeof value === 'number' && Number.isFinite(value);
}

function isCount(value: unknown): value is number {
  return Number.isSafeInteger(value) && (value as number) >= 0;
}
