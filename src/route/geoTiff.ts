import type { GeoTIFFImage } from 'geotiff';
import { GeoTIFF } from 'geotiff';
import type { Problem, Reading } from '../problem.ts';
import { say } from '../words/words.ts';
import type { ElevationGrid } from './elevation.ts';
import { degreesGrid, resampled } from './gridDegrees.ts';
import { projectionOf } from './projection.ts';
import { BlockDecoder, PACKINGS } from './tiffBlock.ts';
import { directoriesOf, partOf } from './tiffHead.ts';

/** What is read of a GeoTIFF at most. */
export const TIFF_LIMITS = {
  /** As many as of any grid: a one-degree tile at one arc second has 13 million. */
  nodes: 16_000_000,
  blocks: 40_000,
  /** Of one unpacked block. */
  blockBytes: 2 ** 26,
  /** Of all unpacked blocks, in turn. */
  unpackedBytes: 2 ** 29,
} as const;

/** Heights in a plane of x and y, before they are looked at as degrees. Row 0 is the northernmost. */
export interface Raster {
  readonly columns: number;
  readonly rows: number;
  /** Of the first node, in the system's own units; steps are positive eastward and southward. */
  readonly x0: number;
  readonly y0: number;
  readonly xStep: number;
  readonly yStep: number;
  readonly elevationM: Float32Array;
}

/**
 * Reads heights from a GeoTIFF (OGC 19-008r4): one band of whole or decimal numbers, in tiles or strips, unpacked or
 * packed by deflate, LZW or PackBits, in degrees or UTM. Of a large one, the finest overview that is not too large. What
 * lies in metres is read off at nodes in degrees, as far apart. Only what is needed of the file is read.
 */
export async function readGeoTiff(
  file: Blob,
  onProgress: (share: number) => void = () => {},
): Promise<Reading<ElevationGrid>> {
  const words = say.formats.elevation;
  const problems: Problem[] = [];
  const warn = (what: string, done: string, severity: Problem['severity'] = 'warning', times = 1) =>
    problems.push({ severity, where: say.formats.theFile, what, done, times });
  try {
    const directories = await directoriesOf(file);
    if (directories === null) return failed(words.noTiff(words.tags));
    const tiff = await GeoTIFF.fromSource(sourceOf(file));
    const first = await tiff.getImage(0);
    const placed = placeOf(first);
    if (placed === null) return failed(words.noPlace);
    const projection = projectionOf(placed.epsg);
    if (projection === null) return failed(say.formats.unknownSystem(`EPSG:${placed.epsg}`));
    if (!holdsHeights(first)) return failed(words.noHeights);
    const image = await chosen(first, directories, (i) => tiff.getImage(i));
    if (image === null) return failed(words.tooMany(TIFF_LIMITS.nodes), words.cut);
    const [columns, rows] = [image.getWidth(), image.getHeight()];
    const xStep = (placed.xStep * first.getWidth()) / columns;
    const yStep = (placed.yStep * first.getHeight()) / rows;
    const half = placed.isArea ? 0.5 : 0;
    const packing = Number((await image.fileDirectory.loadValue('Compression')) ?? 1);
    if (!PACKINGS.includes(packing)) return failed(words.packing(packing));
    const { heights, damaged } = await heightsOf(image, packing, noDataOf(first), file.size, onProgress);
    scale(heights, placed.metresPerUnit, await scaleOf(first));
    const raster = {
      columns,
      rows,
      x0: placed.west + half * xStep,
      y0: placed.north - half * yStep,
      xStep,
      yStep,
      elevationM: heights,
    };
    if (!heights.some((height) => !Number.isNaN(height))) return failed(words.allUnknown);
    const grid = projection.isDegrees
      ? degreesGrid(raster)
      : resampled(raster, projection, TIFF_LIMITS.nodes);
    if (grid === null) return failed(words.noPlace);
    if (damaged > 0) warn(words.damaged, words.partsUnknown, 'error', damaged);
    if (image !== first)
      warn(words.overview(Math.round(grid.latStepDeg * METRES_PER_DEGREE)), words.cutForFiner);
    if (!projection.isDegrees) warn(words.resampled(`EPSG:${placed.epsg}`), words.finer);
    return { value: grid, problems };
  } catch (error) {
    return failed(words.noTiff(error instanceof Error ? error.message : String(error)));
  }
}

/** The library's own source of a file asks for a FileReader, which Node lacks. */
function sourceOf(file: Blob): Parameters<typeof GeoTIFF.fromSource>[0] {
  const fetchSlice = async ({ offset, length }: { readonly offset: number; readonly length: number }) => ({
    offset,
    length,
    data: await partOf(file, offset, length).arrayBuffer(),
  });
  return {
    fetchSlice,
    fetch: async (slices) => (await Promise.all(slices.map(fetchSlice))).map(({ data }) => data),
    fileSize: file.size,
    close: () => Promise.resolve(),
  };
}

/** Of latitude, for a size in words. */
const METRES_PER_DEGREE = 111_200;

function failed(what: string, done = say.formats.elevation.noGrid): Reading<ElevationGrid> {
  return { value: null, problems: [{ severity: 'error', where: say.formats.theFile, what, done, times: 1 }] };
}

interface Placed {
  readonly epsg: number;
  readonly west: number;
  readonly north: number;
  readonly xStep: number;
  readonly yStep: number;
  /** Positions are corners of cells, not their middles (GTRasterTypeGeoKey). */
  readonly isArea: boolean;
  readonly metresPerUnit: number;
}

/** Codes of vertical units (EPSG registry): metre, foot, US survey foot. */
const UNITS: Readonly<Record<number, number>> = { 9001: 1, 9002: 0.3048, 9003: 1200 / 3937 };

/** Where a picture lies, north up; null where it does not say, or lies askew. */
function placeOf(image: GeoTIFFImage): Placed | null {
  const keys = image.getGeoKeys() as Readonly<Record<string, unknown>> | null;
  const key = (...names: string[]) => names.map((name) => keys?.[name]).find((v) => typeof v === 'number');
  const epsg =
    key('GTModelTypeGeoKey') === 1
      ? key('ProjectedCSTypeGeoKey', 'ProjectedCRSGeoKey')
      : key('GeographicTypeGeoKey', 'GeodeticCRSGeoKey');
  const numbers = (tag: 'ModelTiepoint' | 'ModelPixelScale' | 'ModelTransformation') => {
    const value: unknown = image.fileDirectory.hasTag(tag) ? image.fileDirectory.getValue(tag) : [];
    return Array.from(value as ArrayLike<number>);
  };
  const [i, j, , x, y] = numbers('ModelTiepoint');
  const [sx, sy] = numbers('ModelPixelScale');
  const m = numbers('ModelTransformation');
  const askew = m.length > 0 && (m[1] !== 0 || m[4] !== 0);
  const [xStep, yStep] = m.length > 0 ? [m[0], -m[5]] : [sx, sy];
  const [west, north] = m.length > 0 ? [m[3], m[7]] : [x - i * sx, y + j * sy];
  const usable = [west, north].every(Number.isFinite) && xStep > 0 && yStep > 0 && !askew;
  if (epsg === undefined || !usable || !Number.isFinite(xStep * yStep)) return null;
  const metresPerUnit = UNITS[key('VerticalUnitsGeoKey', 'VerticalUnits') ?? 9001];
  if (metresPerUnit === undefined) return null;
  return {
    epsg,
    west,
    north,
    xStep,
    yStep,
    isArea: (key('GTRasterTypeGeoKey') ?? 1) !== 2,
    metresPerUnit,
  };
}

/** One band of numbers that are no colours: 8 to 64 bits, whole or decimal. */
function holdsHeights(image: GeoTIFFImage): boolean {
  const [bits, format] = [image.getBitsPerSample(0), image.getSampleFormat(0)];
  const usable = format === 3 ? [32, 64] : format === 1 || format === 2 ? [8, 16, 32] : [];
  return image.getSamplesPerPixel() === 1 && usable.includes(bits);
}

/** The picture itself, or else the finest of its overviews that is not too large. */
async function chosen(
  first: GeoTIFFImage,
  directories: number,
  imageAt: (i: number) => Promise<GeoTIFFImage>,
): Promise<GeoTIFFImage | null> {
  const nodes = (image: GeoTIFFImage) => image.getWidth() * image.getHeight();
  const fits = (image: GeoTIFFImage) =>
    nodes(image) <= TIFF_LIMITS.nodes && image.getWidth() >= 2 && image.getHeight() >= 2;
  if (fits(first)) return first;
  if (nodes(first) <= TIFF_LIMITS.nodes) return null;
  let best: GeoTIFFImage | null = null;
  for (let i = 1; i < directories; i++) {
    const image = await imageAt(i);
    // An overview is marked as a reduced picture, a mask by another bit (TIFF 6.0, NewSubfileType).
    const kind = Number((await image.fileDirectory.loadValue('NewSubfileType')) ?? 0);
    const isOverview = kind === 1 && holdsHeights(image) && fits(image);
    if (isOverview && (best === null || nodes(image) > nodes(best))) best = image;
  }
  return best;
}

function noDataOf(image: GeoTIFFImage): number | null {
  const value = image.getGDALNoData();
  return value === null || Number.isNaN(value) ? null : value;
}

/** Factor and summand by which the numbers of the file become heights, as GDAL writes them. */
async function scaleOf(image: GeoTIFFImage): Promise<readonly [number, number]> {
  const said = image.fileDirectory.hasTag('GDAL_METADATA') ? await image.getGDALMetadata(0) : null;
  const number = (name: string, other: number) => {
    const value = Number(said?.[name] ?? other);
    return Number.isFinite(value) ? value : other;
  };
  return [number('SCALE', 1), number('OFFSET', 0)];
}

function scale(
  heights: Float32Array,
  metresPerUnit: number,
  [factor, summand]: readonly [number, number],
): void {
  if (metresPerUnit === 1 && factor === 1 && summand === 0) return;
  for (let i = 0; i < heights.length; i++) heights[i] = (heights[i] * factor + summand) * metresPerUnit;
}

/** All heights, block by block, NaN where there is none; and how many blocks could not be unpacked. */
async function heightsOf(
  image: GeoTIFFImage,
  packing: number,
  noData: number | null,
  fileSize: number,
  onProgress: (share: number) => void,
): Promise<{ readonly heights: Float32Array; readonly damaged: number }> {
  const [columns, rows] = [image.getWidth(), image.getHeight()];
  const [wide, high] = [
    image.getTileWidth(),
    Math.min(image.getTileHeight(), image.isTiled ? Infinity : rows),
  ];
  const size = image.getBitsPerSample(0) / 8;
  const blockBytes = wide * high * size;
  const [across, down] = [Math.ceil(columns / wide), Math.ceil(rows / high)];
  const all = across * down;
  const bounded =
    blockBytes > 0 &&
    blockBytes <= TIFF_LIMITS.blockBytes &&
    all <= TIFF_LIMITS.blocks &&
    all * blockBytes <= TIFF_LIMITS.unpackedBytes;
  if (!bounded) throw new Error(say.formats.elevation.blocks);
  const decoder = new BlockDecoder(packing, blockBytes, {
    tileWidth: wide,
    tileHeight: high,
    predictor: Number((await image.fileDirectory.loadValue('Predictor')) ?? 1),
    bitsPerSample: image.getBitsPerSample(0),
    planarConfiguration: 1,
  });
  const counts = await numbersIn(image, image.isTiled ? 'TileByteCounts' : 'StripByteCounts');
  const offsets = await numbersIn(image, image.isTiled ? 'TileOffsets' : 'StripOffsets');
  const read = image.getReaderForSample(0);
  const heights = new Float32Array(columns * rows).fill(NaN);
  let damaged = 0;
  for (let block = 0; block < all; block++) {
    const [x, y] = [block % across, Math.floor(block / across)];
    const packed = counts[block];
    // Nothing was written here.
    if (packed === 0) continue;
    // What no packing makes of so few heights, what the file does not have, and what it only claims.
    if (!(packed <= 2 * blockBytes + 1_024 && offsets[block] + packed <= fileSize)) {
      damaged++;
      continue;
    }
    try {
      const { data } = await image.getTileOrStrip(x, y, 0, decoder);
      const view = new DataView(data as ArrayBuffer);
      const [west, north] = [x * wide, y * high];
      const [width, height] = [Math.min(wide, columns - west), Math.min(high, rows - north)];
      for (let row = 0; row < height; row++)
        for (let column = 0; column < width; column++) {
          const value = read.call(view, (row * wide + column) * size, image.littleEndian);
          const known = value !== noData && Math.abs(value) < UNKNOWN;
          heights[(north + row) * columns + west + column] = known ? value : NaN;
        }
    } catch {
      damaged++;
    }
    onProgress((block + 1) / all);
  }
  return { heights, damaged };
}

/** Of a tag that has one number for each block; fewer where the file claims more blocks than it tells of. */
async function numbersIn(image: GeoTIFFImage, tag: BlockTag): Promise<number[]> {
  const value: unknown = image.fileDirectory.hasTag(tag) ? await image.fileDirectory.loadValue(tag) : [];
  return (typeof value === 'number' ? [value] : Array.from(value as ArrayLike<number | bigint>)).map(Number);
}

type BlockTag = 'TileByteCounts' | 'StripByteCounts' | 'TileOffsets' | 'StripOffsets';

/** Numbers that large stand for none, said or not (such as -3.4e38), whatever the unit. */
const UNKNOWN = 1e6;
