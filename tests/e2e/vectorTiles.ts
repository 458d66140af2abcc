/** Units along an edge of a tile. */
const EXTENT = 4096;
const ZOOM = 10;

type Points = readonly (readonly [x: number, y: number])[];

interface Drawn {
  readonly type: 'point' | 'line' | 'polygon';
  /** Several make one feature of many parts. */
  readonly parts: readonly Points[];
  readonly name?: string;
}

/** A PMTiles file of one invented vector tile round a place: a lake, a wood, ways and a hamlet. */
export function vectorTiles({ lng, lat }: { readonly lng: number; readonly lat: number }): Buffer {
  const count = 2 ** ZOOM;
  const x = Math.floor(((lng + 180) / 360) * count);
  const mercator = (degrees: number) => Math.asinh(Math.tan((degrees * Math.PI) / 180)) / Math.PI;
  const y = Math.floor(((1 - mercator(lat)) / 2) * count);
  const across = Math.round((((lng + 180) / 360) * count - x) * EXTENT);
  const down = Math.round((((1 - mercator(lat)) / 2) * count - y) * EXTENT);
  const rungs = Array.from({ length: 64 }, (_, i) => i * 64);
  const tile = tileOf({
    water: [
      // A lake left of the place, all the way to the edge.
      { type: 'polygon', parts: [[[0, 0], [across, 0], [across, EXTENT], [0, EXTENT]]] }, // prettier-ignore
    ],
    landcover: [
      { type: 'polygon', parts: [[[across, 0], [EXTENT, 0], [EXTENT, down], [across, down]]], name: 'High wood' }, // prettier-ignore
    ],
    roads: [
      { type: 'line', parts: rungs.map((at) => [[0, at], [EXTENT, at]]) }, // prettier-ignore
      { type: 'line', parts: [[[across + 20, 0], [across + 20, EXTENT]]], name: 'Mill lane' }, // prettier-ignore
    ],
    places: [{ type: 'point', parts: [[[across + 40, down + 30]]], name: 'Upper hamlet' }],
  });
  const degrees = (tileX: number, tileY: number) => [
    (tileX / count) * 360 - 180,
    (Math.atan(Math.sinh(Math.PI * (1 - (2 * tileY) / count))) * 180) / Math.PI,
  ];
  const [west, north] = degrees(x, y);
  const [east, south] = degrees(x + 1, y + 1);
  const named = { name: 'String' };
  const fields = { water: {}, landcover: named, roads: named, places: named };
  const metadata = Buffer.from(
    JSON.stringify({ vector_layers: Object.entries(fields).map(([id, fields]) => ({ id, fields })) }),
  );
  const directory = Buffer.concat([
    varint(1),
    varint(tileId(x, y)),
    varint(1),
    varint(tile.length),
    varint(1),
  ]);
  const header = Buffer.alloc(127);
  header.write('PMTiles', 0, 'latin1');
  header[7] = 3;
  const metadataAt = header.length + directory.length;
  const tilesAt = metadataAt + metadata.length;
  const places = [
    127,
    directory.length,
    metadataAt,
    metadata.length,
    tilesAt,
    0,
    tilesAt,
    tile.length,
    1,
    1,
    1,
  ];
  places.forEach((value, i) => header.writeBigUInt64LE(BigInt(value), 8 + 8 * i));
  // Clustered; directories and tiles unpacked; vectors.
  Buffer.from([1, 1, 1, 1, ZOOM, ZOOM]).copy(header, 96);
  [west, south, east, north].forEach((at, i) => header.writeInt32LE(Math.round(at * 1e7), 102 + 4 * i));
  return Buffer.concat([header, directory, metadata, tile]);
}

/** The number of a tile: those of lower zooms, and its place on the Hilbert curve (PMTiles version 3, section 4.1.1). */
function tileId(tileX: number, tileY: number): number {
  let [id, x, y] = [0, tileX, tileY];
  for (let z = 0; z < ZOOM; z++) id += 4 ** z;
  for (let half = 2 ** (ZOOM - 1); half > 0; half /= 2) {
    const [right, lower] = [(x & half) > 0 ? 1 : 0, (y & half) > 0 ? 1 : 0];
    id += half * half * ((3 * right) ^ lower);
    if (lower === 0) {
      if (right === 1) [x, y] = [half - 1 - x, half - 1 - y];
      [x, y] = [y, x];
    }
  }
  return id;
}

/** A tile as protocol buffers (Vector Tile Specification 2.1, section 4). */
function tileOf(layers: Readonly<Record<string, readonly Drawn[]>>): Buffer {
  return Buffer.concat(Object.entries(layers).map(([name, drawn]) => part(3, layerOf(name, drawn))));
}

function layerOf(name: string, drawn: readonly Drawn[]): Buffer {
  const named = drawn.filter((one) => one.name !== undefined);
  return Buffer.concat([
    Buffer.concat([varint(15 << 3), varint(2)]),
    part(1, Buffer.from(name)),
    ...drawn.map((one) => part(2, featureOf(one, named.indexOf(one)))),
    part(3, Buffer.from('name')),
    ...named.map((one) => part(4, part(1, Buffer.from(one.name!)))),
    Buffer.concat([varint(5 << 3), varint(EXTENT)]),
  ]);
}

function featureOf({ type, parts }: Drawn, named: number): Buffer {
  const kind = { point: 1, line: 2, polygon: 3 }[type];
  let [x, y] = [0, 0];
  const moved = ([toX, toY]: readonly [number, number]): number[] => {
    const by = [toX - x, toY - y].map((way) => (way << 1) ^ (way >> 31));
    [x, y] = [toX, toY];
    return by;
  };
  const commands = parts.flatMap(([first, ...rest]) => [
    (1 << 3) | 1,
    ...moved(first),
    ...(rest.length > 0 ? [(rest.length << 3) | 2, ...rest.flatMap(moved)] : []),
    ...(type === 'polygon' ? [(1 << 3) | 7] : []),
  ]);
  return Buffer.concat([
    ...(named < 0 ? [] : [part(2, Buffer.concat([varint(0), varint(named)]))]),
    Buffer.concat([varint(3 << 3), varint(kind)]),
    part(4, Buffer.concat(commands.map(varint))),
  ]);
}

/** A field that has a length. */
function part(field: number, bytes: Buffer): Buffer {
  return Buffer.concat([varint((field << 3) | 2), varint(bytes.length), bytes]);
}

function varint(value: number): Buffer {
  const bytes: number[] = [];
  let left = value;
  for (; left > 127; left = Math.floor(left / 128)) bytes.push((left % 128) | 128);
  return Buffer.from([...bytes, left]);
}
