import { contradictions } from '../terrain/check.ts';
import type { Feature, FeatureKind } from '../terrain/feature.ts';
import { featureFields } from '../terrain/feature.ts';
import type { How, Hows } from '../terrain/measure.ts';
import { HOWS } from '../terrain/measure.ts';
import type { Plane, Stretch } from '../terrain/obstacle.ts';
import { corridorFields, planeFields, stretchFields } from '../terrain/obstacle.ts';
import type { Surface } from '../terrain/surface.ts';
import { surfaceFields } from '../terrain/surface.ts';
import { TRIP_LIMITS } from './limits.ts';
import type { Reader } from './reader.ts';
import { printable } from './reader.ts';
import { say } from '../words/words.ts';

export const STRETCH_NAMES = ['lengthM', 'plane', 'surface', 'corridor', 'features', 'hows'];

/** Stands where the surface could not be read: the least grip there is. */
const SLIPPERIEST: Surface = { material: 'ice', condition: 'wet' };

/**
 * Reads the ground of an obstacle or a bypass. Ground that lost a piece would look easier than it is, so its length
 * becomes NaN, not known: nothing is judged on it until someone has looked at it again.
 */
export function stretchFrom(reader: Reader, value: unknown, where: string): Stretch {
  const record = reader.record(value, where, STRETCH_NAMES);
  const { lengthM } = reader.values(stretchFields, record, where).values;
  const part = <T extends typeof surfaceFields | typeof corridorFields>(name: string, fields: T) => {
    const values = record && reader.record(record[name], `${where}.${name}`, Object.keys(fields));
    return reader.values(fields, values, `${where}.${name}`);
  };
  const surface = part('surface', surfaceFields);
  const corridor = part('corridor', corridorFields);
  const filed = record && reader.list(record.features, `${where}.features`, TRIP_LIMITS.features);
  const features = (filed ?? []).map((feature, i) => featureFrom(reader, feature, `${where}.features[${i}]`));
  const read = features.filter((feature) => feature !== null);
  const whole = surface.whole && corridor.whole && read.length === lengthOf(record?.features);
  if (!whole) reader.error(`${where}.lengthM`, say.tripFile.groundLost(lengthM), say.tripFile.groundLostDone);
  return {
    lengthM: whole ? lengthM : NaN,
    plane: record ? planeFrom(reader, record.plane, `${where}.plane`) : { slopeRad: null, camberRad: null },
    surface: surface.whole ? surface.values : SLIPPERIEST,
    corridor: corridor.values,
    features: read,
    hows: record ? howsFrom(reader, record.hows, `${where}.hows`, features) : {},
  };
}

function lengthOf(list: unknown): number {
  return Array.isArray(list) ? list.length : -1;
}

function planeFrom(reader: Reader, value: unknown, where: string): Plane {
  const record = reader.record(value, where, Object.keys(planeFields));
  const angle = (name: keyof Plane): number | null => {
    if (record === null || record[name] === null) return null;
    const read = reader.values({ [name]: planeFields[name] }, record, where).values[name];
    return Number.isNaN(read) ? null : read;
  };
  return { slopeRad: angle('slopeRad'), camberRad: angle('camberRad') };
}

/** Null where the kind or a choice cannot be read: half a feature is no feature. */
function featureFrom(reader: Reader, value: unknown, where: string): Feature | null {
  const record = reader.record(value, where);
  if (record === null) return null;
  const kind = record.kind;
  if (!isKind(kind)) {
    const kinds = Object.keys(featureFields).join(', ');
    reader.error(`${where}.kind`, say.tripFile.kindOneOf(kinds), say.tripFile.featureLeftOut);
    return null;
  }
  const fields = featureFields[kind];
  reader.names(record, where, ['kind', ...Object.keys(fields)]);
  const { values, whole } = reader.values(fields, record, where);
  if (!whole) {
    reader.error(where, say.tripFile.featureChoice, say.tripFile.featureLeftOut);
    return null;
  }
  const feature = { kind, ...values } as Feature;
  reader.add(contradictions(feature, where));
  return feature;
}

function isKind(kind: unknown): kind is FeatureKind {
  return typeof kind === 'string' && Object.hasOwn(featureFields, kind);
}

/** How each value was got, for values that are there; `features` as filed, null where one was left out. */
function howsFrom(
  reader: Reader,
  value: unknown,
  where: string,
  features: readonly (Feature | null)[],
): Hows {
  const record = reader.record(value, where);
  if (record === null) return {};
  const paths = new Map(PATHS.map((path) => [path, path]));
  let kept = 0;
  features.forEach((feature, i) => {
    if (feature === null) return;
    for (const name of Object.keys(featureFields[feature.kind]))
      paths.set(`features.${i}.${name}`, `features.${kept}.${name}`);
    kept++;
  });
  const hows: Record<string, How> = {};
  for (const [filed, how] of Object.entries(record)) {
    const at = `${where}["${printable(filed)}"]`;
    const path = paths.get(filed);
    if (path === undefined) reader.warning(at, say.tripFile.noSuchValue, say.tripFile.passedOver);
    else if (!HOWS.includes(how as How))
      reader.warning(at, say.tripFile.oneOf(HOWS.join(', ')), say.tripFile.countsByEye);
    else hows[path] = how as How;
  }
  return hows;
}

/** The values of a stretch that a tape or an inclinometer reads, as `hows` names them; features apart. */
export const PATHS = [
  'lengthM',
  ...Object.keys(planeFields).map((name) => `plane.${name}`),
  ...Object.keys(surfaceFields).map((name) => `surface.${name}`),
  ...Object.keys(corridorFields).map((name) => `corridor.${name}`),
];
