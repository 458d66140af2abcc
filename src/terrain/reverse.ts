import type { Feature } from './feature.ts';
import type { Corridor } from './obstacle.ts';

/** The same shape met from the other end: x and y change sign, a rise becomes a drop. Heights may shift by a constant. */
export function reversedFeature(feature: Feature): Feature {
  switch (feature.kind) {
    case 'rut':
      return { ...feature, centreYM: -feature.centreYM, fromM: -feature.toM, toM: -feature.fromM };
    case 'hole':
    case 'rock':
      return { ...feature, xM: -feature.xM, yM: -feature.yM };
    case 'ledge': {
      const faceM = Math.abs(feature.riseM) / Math.tan(feature.faceRad);
      return { ...feature, xM: -feature.xM - faceM / Math.cos(feature.skewRad), riseM: -feature.riseM };
    }
    case 'ditch':
    case 'hump':
      return { ...feature, xM: -feature.xM };
    case 'log':
      return { ...feature, xM: -feature.xM, fromYM: -feature.toYM, toYM: -feature.fromYM };
    case 'bank':
      return { ...feature, side: feature.side === 'left' ? 'right' : 'left' };
    case 'water':
    case 'softPatch':
      return { ...feature, fromM: -feature.toM, toM: -feature.fromM };
  }
}

export function reversedCorridor(corridor: Corridor): Corridor {
  return {
    leftM: corridor.rightM,
    leftBound: corridor.rightBound,
    rightM: corridor.leftM,
    rightBound: corridor.leftBound,
    headroomM: corridor.headroomM,
  };
}
