import type { Field } from '../field.ts';
import type { FeatureKind } from '../terrain/feature.ts';
import { featureFields } from '../terrain/feature.ts';
import type { How } from '../terrain/measure.ts';
import { HOWS } from '../terrain/measure.ts';
import { corridorFields, planeFields, stretchFields } from '../terrain/obstacle.ts';
import { surfaceFields } from '../terrain/surface.ts';
import { offsetFields } from './fields.ts';
import { isJudged } from './gradedHeld.ts';
import { Branch, partsOf, plainOf } from './heldKey.ts';
import type { Held, Scalar } from './replica.ts';

/** What a value of a graded track belongs to, for a person to find it. */
export interface Spot {
  readonly of: 'track' | 'obstacle' | 'line' | 'photo' | 'visit' | 'outcome';
  /** Null for what belongs to the track as a whole; else the obstacle, with its name today. */
  readonly obstacleId: string | null;
  readonly obstacleName: string;
  /** Of the line, photo, visit or outcome; null for track and obstacle. */
  readonly id: string | null;
  /** Name of the line, caption of the photo; empty for the others. */
  readonly name: string;
  /** When the visit or the outcome was; null for the others. */
  readonly atMs: number | null;
  /** The shape in the ground that it is a size of; `number` counts from 1. */
  readonly feature: { readonly kind: FeatureKind; readonly number: number } | null;
  /** As in the record: `name`, `depthM`, `slopeRad`; `place` for a position with its station, `there` for being there at all. */
  readonly field: string;
  /** How the value is called, and in which unit it is; null where no table says so. */
  readonly table: Field | null;
  /** Whether verdicts follow from it. */
  readonly isJudged: boolean;
}

/** A value as it is told: plain, as in the record; bytes for an image. */
export interface ToldValue {
  readonly value: unknown;
  /** How it was measured; null where nobody said, or it is no measurement. */
  readonly how: How | null;
}

const GROUPS = { lines: 'line', photos: 'photo', visits: 'visit', outcomes: 'outcome' } as const;

const GROUND_FIELDS: Readonly<Record<string, Field>> = {
  ...stretchFields,
  ...planeFields,
  ...surfaceFields,
  ...corridorFields,
};

/** Finds what the keys of a replica are about; null for those that are nothing to a person. */
export function spotsIn(held: Held): (key: string) => Spot | null {
  const root = Branch.of(held);
  return (key) => {
    const parts = partsOf(key);
    const field = parts?.at(-1);
    if (!parts || field === undefined || field === 'order' || key === 'id') return null;
    const none = { obstacleId: null, obstacleName: '', id: null, name: '', atMs: null, feature: null };
    const judged = isJudged(parts);
    if (parts[0] !== 'surveyed') return { ...none, of: 'track', field, table: null, isJudged: judged };
    const [, obstacleId, group, id, inside, part, slot] = parts;
    const obstacle = root.at('surveyed', obstacleId);
    const obstacleName = textOf(obstacle?.read('name'));
    if (!(group in GROUPS) || id === undefined)
      return { ...none, of: 'obstacle', obstacleId, obstacleName, field, table: null, isJudged: judged };
    const one = obstacle?.at(group, id);
    const atMs = one?.read('atMs');
    const feature =
      inside === 'stretch' && part === 'features' ? featureAt(one?.at(inside, part), slot) : null;
    return {
      of: GROUPS[group as keyof typeof GROUPS],
      obstacleId,
      obstacleName,
      id,
      name: textOf(one?.read('name') ?? one?.read('caption')),
      atMs: typeof atMs === 'number' ? atMs : null,
      feature,
      field,
      table: tableOf(inside, feature, field),
      isJudged: judged,
    };
  };
}

function featureAt(features: Branch | undefined, slot: string): Spot['feature'] {
  const kind = features?.read(slot, 'kind');
  if (typeof kind !== 'string' || !Object.hasOwn(featureFields, kind)) return null;
  const order = (name: string) => Number(features?.read(name, 'order'));
  const before = [...(features?.under.keys() ?? [])].filter((other) => order(other) < order(slot));
  return { kind: kind as FeatureKind, number: before.length + 1 };
}

function tableOf(inside: string, feature: Spot['feature'], field: string): Field | null {
  if (feature) return featureFields[feature.kind][field] ?? null;
  if (inside === 'stretch') return GROUND_FIELDS[field] ?? null;
  return field === 'offsetM' ? offsetFields.offsetM : null;
}

function textOf(value: unknown): string {
  return typeof value === 'string' ? value : '';
}

/** What a person is told of a value that stands under `key`. */
export function toldValue(key: string, value: Scalar): ToldValue {
  const plain = plainOf(value);
  const parts = partsOf(key) ?? [];
  const isMeasured = parts[4] === 'stretch' && !['there', 'order', 'kind'].includes(parts.at(-1) ?? '');
  if (!isMeasured || !Array.isArray(plain)) return { value: plain, how: null };
  const [measured, how] = plain as unknown[];
  return { value: measured, how: HOWS.includes(how as How) ? (how as How) : null };
}
