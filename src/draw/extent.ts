import type { Feature, FeatureKind } from '../terrain/feature.ts';

export type Shaped<K extends FeatureKind> = Extract<Feature, { kind: K }>;

/** Ground that a shape takes up, as recorded; a drawing that cuts past it does not show it. */
export interface Extent {
  readonly fromM: number;
  readonly toM: number;
  readonly rightM: number;
  readonly leftM: number;
}

const EVERYWHERE: Extent = { fromM: -Infinity, toM: Infinity, rightM: -Infinity, leftM: Infinity };

/** At y = `yM`, for what lies across the line turned. */
export function extentOf(feature: Feature, yM: number): Extent {
  const about = (xM: number, acrossM: number) => ({ fromM: xM - acrossM / 2, toM: xM + acrossM / 2 });
  const beside = (y: number, widthM: number) => ({ rightM: y - widthM / 2, leftM: y + widthM / 2 });
  switch (feature.kind) {
    case 'rut':
      return { fromM: feature.fromM, toM: feature.toM, ...beside(feature.centreYM, feature.widthM) };
    case 'hole':
    case 'rock':
      return { ...about(feature.xM, feature.lengthM), ...beside(feature.yM, feature.widthM) };
    case 'ditch':
      return { ...EVERYWHERE, ...about(edge(feature, yM), feature.widthM / Math.cos(feature.skewRad)) };
    case 'hump':
      return { ...EVERYWHERE, ...about(edge(feature, yM), feature.lengthM / Math.cos(feature.skewRad)) };
    case 'log':
      return {
        ...about(edge(feature, yM), feature.diameterM / Math.cos(feature.skewRad)),
        rightM: feature.fromYM,
        leftM: feature.toYM,
      };
    case 'water':
    case 'softPatch':
      return { ...EVERYWHERE, fromM: feature.fromM, toM: feature.toM };
    case 'ledge':
    case 'bank':
      return EVERYWHERE;
  }
}

/** Where what lies across the line, turned by its skew, is at a y. */
export function edge({ xM, skewRad }: Shaped<'ledge' | 'ditch' | 'hump' | 'log'>, yM: number): number {
  return xM + yM * Math.tan(skewRad);
}
