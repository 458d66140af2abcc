import proj4 from 'proj4';

/** Turns positions of a coordinate reference system into WGS 84 degrees, and back. */
export interface Projection {
  /** Of the system's own axes: x eastward, y northward. */
  readonly toDegrees: (x: number, y: number) => readonly [lng: number, lat: number];
  readonly fromDegrees: (lng: number, lat: number) => readonly [x: number, y: number];
  /** True where the system counts in degrees of longitude and latitude itself. */
  readonly isDegrees: boolean;
}

const DEGREES: Projection = {
  toDegrees: (x, y) => [x, y],
  fromDegrees: (lng, lat) => [lng, lat],
  isDegrees: true,
};

/** Systems in degrees that lie within a metre or two of WGS 84: WGS 84 (flat and with height), ETRS89, NAD83, GDA94, GDA2020. */
const LIKE_WGS84 = [4326, 4979, 4258, 4937, 4269, 4283, 7844];

/** Zones of UTM by datum, north and south: code of zone 0 (EPSG registry), first and last zone. */
const UTM = [
  { zero: 32600, first: 1, last: 60, south: false },
  { zero: 32700, first: 1, last: 60, south: true },
  { zero: 25800, first: 28, last: 38, south: false },
];

/** A system by its EPSG code, or null where we do not know it: WGS 84 and the like, UTM on WGS 84 and ETRS89, Web Mercator. */
export function projectionOf(epsg: number): Projection | null {
  if (LIKE_WGS84.includes(epsg)) return DEGREES;
  if (epsg === 3857) return by('+proj=merc +a=6378137 +b=6378137 +units=m +no_defs');
  for (const { zero, first, last, south } of UTM) {
    const zone = epsg - zero;
    if (zone >= first && zone <= last)
      return by(`+proj=utm +zone=${zone}${south ? ' +south' : ''} +datum=WGS84 +units=m +no_defs`);
  }
  return null;
}

function by(definition: string): Projection {
  const converter = proj4(definition);
  return {
    toDegrees: (x, y) => converter.inverse<[number, number]>([x, y]),
    fromDegrees: (lng, lat) => converter.forward<[number, number]>([lng, lat]),
    isDegrees: false,
  };
}
