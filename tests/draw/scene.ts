import { readFileSync } from 'node:fs';
import type { Stood } from '../../src/draw/stood.ts';
import type { Sweep } from '../../src/grade/sweep.ts';
import type { Stretch } from '../../src/terrain/obstacle.ts';
import type { Along } from '../../src/traverse/along.ts';
import type { Check } from '../../src/traverse/assess.ts';
import { nearestStation } from '../../src/traverse/along.ts';
import type { RungName } from '../../src/vehicle/aids.ts';
import type { VehicleValues } from '../../src/vehicle/specs.ts';

/** A traverse as it was once worked out, every tenth station kept, so that a drawing is tested apart from the physics. */
export interface Scene {
  readonly stretch: Stretch;
  readonly slopeRad: number;
  readonly offsetM: number;
  readonly along: Along;
  readonly stood: Stood;
  readonly rungs: readonly RungName[];
  readonly looked: number;
  readonly checks: readonly Check[];
  readonly sweep: Sweep;
}

interface Filed extends Omit<Scene, 'stood' | 'checks'> {
  readonly values: VehicleValues;
  /** Where mid-wheelbase stands. */
  readonly atM: number;
}

export const SCENES = ['ruts-and-hole', 'step-and-log'] as const;

export function scene(name: (typeof SCENES)[number]): Scene {
  const text = readFileSync(`tests/draw/in/${name}.json`, 'utf8');
  const filed = JSON.parse(text, (_key, value: unknown) => columns(value)) as Filed;
  const n = nearestStation(filed.along.record, filed.atM);
  return { ...filed, stood: { values: filed.values, along: filed.along, n }, checks: filed.along.limits };
}

/** Lists of numbers as the columns that they were; null is what was not known. */
function columns(value: unknown): unknown {
  if (!Array.isArray(value) || value.length === 0) return value;
  if (!value.every((one) => one === null || typeof one === 'number')) return value as unknown;
  return Float64Array.from(value, (one: number | null) => one ?? NaN);
}
