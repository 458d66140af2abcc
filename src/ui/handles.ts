import { featureName } from '../brief/featureText.ts';
import type { CutFrame } from '../draw/cut.ts';
import type { Point } from '../draw/ink.ts';
import { offsetFields } from '../archive/fields.ts';
import type { NumberField } from '../field.ts';
import type { Feature } from '../terrain/feature.ts';
import { featureFields, heightM } from '../terrain/feature.ts';
import type { Stretch } from '../terrain/obstacle.ts';
import type { System } from '../units.ts';
import { fromShown } from '../units.ts';

/** A size that can be taken hold of in a drawing. */
export interface Handle {
  readonly id: string;
  /** Index of its feature, or null for the line's offset. */
  readonly feature: number | null;
  readonly label: string;
  /** Where the value lies in the stretch as recorded; null for the line's offset. */
  readonly path: string | null;
  readonly field: NumberField;
  /** As recorded. */
  readonly value: number;
  readonly at: Point;
  /** Where its hold extends to from its place, so that neighbours do not cover each other. */
  readonly towards: 'up' | 'down' | 'left' | 'right' | 'about';
  /** Change of the value, as recorded, for a move by so many pixels. */
  readonly change: (dx: number, dy: number) => number;
}

/** Pixels from one arrow key's press to the next are made up from this: one step of the value. */
export function stepOf(field: NumberField, system: System): number {
  if (field.quantity === 'length') return system === 'metric' ? 0.01 : fromShown(0.05, 'length', system);
  return system === 'metric' ? 0.01 : fromShown(0.5, 'size', system);
}

/** The value on whole steps and within its field. */
export function settled(value: number, field: NumberField, system: System): number {
  const step = stepOf(field, system);
  const whole = Math.round(value / step) * step;
  return Math.min(field.max, Math.max(field.min, Number(whole.toFixed(4))));
}

/**
 * Handles on what a cut across goes through: of every rut and hole the depth, of the chosen one its width and centre
 * too, and the offset of the line. `stretch` is as travelled; `turned` is −1 where that is against the recorded direction.
 */
export function handlesAcross(
  stretch: Stretch,
  stationM: number,
  offsetM: number | null,
  frame: CutFrame,
  chosen: number | null,
  turned: 1 | -1,
): Handle[] {
  const { at, pxPerM } = frame;
  const camberRad = stretch.plane.camberRad ?? 0;
  const [cos, sin] = [Math.cos(camberRad), Math.sin(camberRad)];
  const left = (dx: number, dy: number) => -(dx * cos + dy * sin) / pxPerM;
  const up = (dx: number, dy: number) => (dx * sin - dy * cos) / pxPerM;
  const cuts = stretch.features.flatMap((feature, i) =>
    isCutHere(feature, stationM) ? [{ feature, i }] : [],
  );
  const one = chosen !== null && cuts.some(({ i }) => i === chosen) ? chosen : (cuts[0]?.i ?? null);
  const handles = cuts.flatMap(({ feature, i }): Handle[] => {
    const y = feature.kind === 'rut' ? feature.centreYM : feature.yM;
    const fields = featureFields[feature.kind] as Readonly<Record<string, NumberField>>;
    const centre = feature.kind === 'rut' ? 'centreYM' : 'yM';
    const of = `${featureName(feature.kind)} ${i + 1}, ${y * turned >= 0 ? 'left' : 'right'}`;
    const handle = (
      name: string,
      value: number,
      rest: Pick<Handle, 'at' | 'towards' | 'change'>,
    ): Handle => ({
      id: `${i}.${name}`,
      feature: i,
      label: `${fields[name].label} of ${of}`,
      path: `features.${i}.${name}`,
      field: fields[name],
      value,
      ...rest,
    });
    const bottom = at(y, heightM(stretch.features, stationM, y));
    const depth = handle('depthM', feature.depthM, {
      at: bottom,
      towards: 'down',
      change: (dx, dy) => -up(dx, dy),
    });
    if (i !== one) return [depth];
    const out = y >= 0 ? 1 : -1;
    return [
      depth,
      handle('widthM', feature.widthM, {
        at: at(y + (out * feature.widthM) / 2, 0),
        towards: out > 0 ? 'left' : 'right',
        change: (dx, dy) => 2 * out * left(dx, dy),
      }),
      handle(centre, y * turned, {
        at: at(y, 0),
        towards: 'up',
        change: (dx, dy) => turned * left(dx, dy),
      }),
    ];
  });
  if (offsetM === null) return handles;
  const offset: Handle = {
    id: 'offset',
    feature: null,
    label: 'Offset of the line',
    path: null,
    field: offsetFields.offsetM,
    value: offsetM * turned,
    at: [at(offsetM, 0)[0], 30],
    towards: 'about',
    change: (dx, dy) => turned * left(dx, dy),
  };
  return [offset, ...handles];
}

type Cut = Extract<Feature, { kind: 'rut' | 'hole' }>;

function isCutHere(feature: Feature, stationM: number): feature is Cut {
  if (feature.kind === 'rut') return stationM > feature.fromM && stationM < feature.toM;
  return feature.kind === 'hole' && Math.abs(stationM - feature.xM) < feature.lengthM / 2;
}
