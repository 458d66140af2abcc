import { gunzipSync } from 'fflate';
import type { ExpressionSpecification, SourceSpecification } from 'maplibre-gl';
import { addProtocol } from 'maplibre-gl';
import { Compression, FileSource, PMTiles, TileType } from 'pmtiles';
import type { Header } from 'pmtiles';
import { spoken } from '../words/words.ts';
import type { Inks } from './inks.ts';
import type { Layer } from './map.svelte.ts';
import { TEXT_FONT } from './map.svelte.ts';

/** What the user laid under the map: a file of tiles, or the address of a server. */
export interface Background {
  readonly kind: 'file' | 'address';
  readonly name: string;
  readonly source: SourceSpecification;
  readonly layersIn: (inks: Inks) => Layer[];
}

/** Address under which MapLibre asks for tiles of a file; nothing goes over the network. */
const PROTOCOL = 'rutline-background';

/** Bytes that a tile or a directory may have unpacked. */
const MOST_BYTES = 2 ** 24;

/** Layers of a vector file that are drawn. */
const MOST_LAYERS = 60;

/** A layer of a vector file, and whether what is in it has names. */
interface VectorLayer {
  readonly id: string;
  readonly hasNames: boolean;
}

const archives = new Map<string, PMTiles>();

/** Opens a PMTiles file (version 3) from the disk; rejects with what is wrong where it is none. */
export async function openTiles(file: File): Promise<Background> {
  const archive = new PMTiles(new FileSource(file), undefined, unpacked);
  const header = await archive.getHeader();
  if (header.tileType === TileType.Unknown) throw new Error(`tile type ${header.tileType}`);
  const isVector = header.tileType === TileType.Mvt;
  const key = `${archives.size + 1}`;
  if (archives.size === 0) addProtocol(PROTOCOL, tile);
  archives.set(key, archive);
  const tiles = [`${PROTOCOL}://${key}/{z}/{x}/{y}`];
  const bounds = boundsOf(header);
  const { minZoom: minzoom, maxZoom: maxzoom } = header;
  return {
    kind: 'file',
    name: file.name,
    source: isVector
      ? { type: 'vector', tiles, bounds, minzoom, maxzoom }
      : { type: 'raster', tiles, bounds, minzoom, maxzoom, tileSize: 256 },
    layersIn: isVector ? drawnPlain(layersIn(await archive.getMetadata())) : drawnAsIs,
  };
}

/** Tiles of a server that the user typed in, pictures of 256 pixels a side. */
export function tilesAt(template: string): Background {
  return {
    kind: 'address',
    name: new URL(template).host,
    source: { type: 'raster', tiles: [template], tileSize: 256, maxzoom: 19 },
    layersIn: drawnAsIs,
  };
}

/** Pictures, faint enough to write on. */
function drawnAsIs({ scheme }: Inks): Layer[] {
  const opacity = scheme === 'night' ? 0.45 : 0.75;
  return [
    { id: 'background', type: 'raster', paint: { 'raster-opacity': opacity, 'raster-fade-duration': 0 } },
  ];
}

/**
 * Of vectors, woods and other areas as a faint tone, waters, lines and names in plain ink. What a layer holds is guessed from
 * its name, as each maker has its own; what covers all land, or the map as a whole, is not drawn.
 */
function drawnPlain(layers: readonly VectorLayer[]): (inks: Inks) => Layer[] {
  return (inks) => {
    const drawn = layers.map(({ id, hasNames }, i) => {
      const isWater = /water|ocean|river|lake|sea/i.test(id);
      const isWhole = /^(earth|land|background)$/i.test(id);
      const fill: Layer = {
        id: `background-fill-${i}`,
        type: 'fill',
        'source-layer': id,
        filter: ['==', ['geometry-type'], 'Polygon'],
        paint: { 'fill-color': isWater ? inks.water : inks.hatch, 'fill-opacity': 0.25 },
      };
      const line: Layer = {
        id: `background-line-${i}`,
        type: 'line',
        'source-layer': id,
        filter: ['==', ['geometry-type'], 'LineString'],
        paint: {
          'line-color': isWater ? inks.water : inks.soft,
          'line-width': ['interpolate', ['linear'], ['zoom'], 8, 0.4, 16, 1.6],
        },
      };
      const names = hasNames ? [nameLayer(id, i, 'line', inks), nameLayer(id, i, 'point', inks)] : [];
      return { fills: isWhole ? [] : [fill], isWater, line, names };
    });
    return [
      ...drawn.filter(({ isWater }) => !isWater).flatMap(({ fills }) => fills),
      ...drawn.filter(({ isWater }) => isWater).flatMap(({ fills }) => fills),
      ...drawn.map(({ line }) => line),
      ...drawn.flatMap(({ names }) => names),
    ];
  };
}

/** Names along lines, or at points and in areas, in the font of the page: no other has to be fetched. */
function nameLayer(id: string, i: number, placement: 'line' | 'point', inks: Inks): Layer {
  const isLine: ExpressionSpecification = ['==', ['geometry-type'], 'LineString'];
  return {
    id: `background-name-${placement}-${i}`,
    type: 'symbol',
    'source-layer': id,
    filter: ['all', ['has', 'name'], placement === 'line' ? isLine : ['!', isLine]],
    layout: {
      'symbol-placement': placement,
      'text-field': ['to-string', ['coalesce', ['get', `name:${spoken}`], ['get', 'name']]],
      'text-font': TEXT_FONT,
      'text-size': 12,
    },
    paint: { 'text-color': inks.soft, 'text-halo-color': inks.paper, 'text-halo-width': 1.5 },
  };
}

async function tile(
  { url }: { readonly url: string },
  abort: AbortController,
): Promise<{ data: ArrayBuffer }> {
  const [key, z, x, y] = url.slice(url.indexOf('://') + 3).split('/');
  const found = await archives.get(key)?.getZxy(Number(z), Number(x), Number(y), abort.signal);
  return { data: found?.data ?? new ArrayBuffer(0) };
}

/** Unpacks what the file says is packed, and no more than can be meant. */
function unpacked(data: ArrayBuffer, compression: Compression): Promise<ArrayBuffer> {
  const bytes = new Uint8Array(data);
  if (bytes.length > MOST_BYTES) throw new Error('a part of it is too large');
  if (compression === Compression.None || compression === Compression.Unknown) return Promise.resolve(data);
  if (compression !== Compression.Gzip) throw new Error('it is packed in a way that is not read');
  const size = new DataView(data).getUint32(data.byteLength - 4, true);
  if (size > MOST_BYTES) throw new Error('a part of it is too large');
  const whole = gunzipSync(bytes, { out: new Uint8Array(size) });
  return Promise.resolve(whole.buffer);
}

function boundsOf({ minLon, minLat, maxLon, maxLat }: Header): [number, number, number, number] {
  const usable = minLon < maxLon && minLat < maxLat && Math.abs(minLat) <= 90 && Math.abs(maxLat) <= 90;
  return usable ? [Math.max(-180, minLon), minLat, Math.min(180, maxLon), maxLat] : [-180, -85, 180, 85];
}

function layersIn(metadata: unknown): VectorLayer[] {
  const { vector_layers: layers } = (metadata ?? {}) as { readonly vector_layers?: unknown };
  if (!Array.isArray(layers)) return [];
  return layers
    .flatMap((layer: unknown): VectorLayer[] => {
      const { id, fields } = (layer ?? {}) as { readonly id?: unknown; readonly fields?: unknown };
      const hasNames = typeof fields === 'object' && fields !== null && 'name' in fields;
      return typeof id === 'string' ? [{ id, hasNames }] : [];
    })
    .slice(0, MOST_LAYERS);
}
