import regular from '@fontsource/noto-sans/files/noto-sans-latin-400-normal.woff2?url';
import semibold from '@fontsource/noto-sans/files/noto-sans-latin-600-normal.woff2?url';
import type {
  GeoJSONSource,
  LayerSpecification,
  MapMouseEvent,
  SourceSpecification,
  StyleSpecification,
} from 'maplibre-gl';
import { LngLatBounds, Map as GlMap, setWorkerUrl } from 'maplibre-gl';
import 'maplibre-gl/dist/maplibre-gl.css';
import workerUrl from 'maplibre-gl/dist/maplibre-gl-worker.mjs?worker&url';
import { metresPerDegree } from '../route/ellipsoid.ts';
import { say } from '../words/words.ts';
import type { Inks } from './inks.ts';
import { hasWebGl } from './webGl.ts';

setWorkerUrl(workerUrl);

/** What is drawn, from the bottom up. Each is one source of its own with its layers. */
const NOUNS = [
  'background',
  'shade',
  'contours',
  'edge',
  'track',
  'slopes',
  'ends',
  'lines',
  'waypoints',
  'path',
  'tracks',
] as const;

export type Noun = (typeof NOUNS)[number];

/** A layer without its source, which is that of its noun. */
export type Layer = LayerSpecification extends infer L
  ? L extends { source: string }
    ? Omit<L, 'source'>
    : never
  : never;

export const TEXT_FONT = ['Noto Sans'];
export const STRONG_FONT = ['Noto Sans Semibold'];

/** Degrees: west, south, east, north. */
export type Bounds = readonly [west: number, south: number, east: number, north: number];

/** Where the map looks. */
export interface Camera {
  readonly lng: number;
  readonly lat: number;
  readonly zoom: number;
  /** Clockwise from north. */
  readonly bearingDeg: number;
  readonly widthPx: number;
  readonly heightPx: number;
  /** Ground covered by a pixel at the middle of the map. */
  readonly metresPerPx: number;
}

/** Closest look: a pixel is about 2 cm, so that lines a wheel apart stand clear of each other. */
const CLOSEST_ZOOM = 22;
/** What comes nearer to the edge than this is moved into the frame. */
const FRAME_PX = 48;
/** Room left around what is fitted into the frame, for tags, key, scale and buttons. */
const NARROW = { top: 60, right: 76, bottom: 52, left: 36 };
const WIDE = { top: 64, right: 96, bottom: 64, left: 248 };
const WIDE_PX = 700;
/** Not closer than this when fitting: a single point has no size. */
const FIT_ZOOM = 17;
/** Pixels round the earth at zoom 0. */
const WORLD_PX = 512;

/** The one holder of MapLibre's map. Camera and faults are state; everything else is asked of the map. */
export class MapView {
  readonly #map: GlMap;
  /** What each source was last given, so that a new coat of paint does not send it again. */
  readonly #contents: Partial<Record<Noun, unknown>> = {};
  camera = $state.raw<Camera>({
    lng: 0,
    lat: 0,
    zoom: 0,
    bearingDeg: 0,
    widthPx: 0,
    heightPx: 0,
    metresPerPx: 1,
  });
  /** What MapLibre complained of last; null while all is well. */
  fault = $state.raw<string | null>(null);

  /** Opens a map in an element; it can be drawn upon when the promise resolves. Rejects with why it cannot be drawn. */
  static async open(container: HTMLElement, bounds: Bounds, inks: Inks): Promise<MapView> {
    try {
      const view = new MapView(container, bounds, inks);
      await view.#map.once('style.load');
      return view;
    } catch (fault) {
      throw hasWebGl() ? fault : new Error(say.map.noWebGl);
    }
  }

  private constructor(container: HTMLElement, bounds: Bounds, inks: Inks) {
    this.#map = new GlMap({
      container,
      style: paper(inks),
      bounds: new LngLatBounds(bounds as [number, number, number, number]),
      fitBoundsOptions: { padding: container.clientWidth > WIDE_PX ? WIDE : NARROW, maxZoom: FIT_ZOOM },
      maxZoom: CLOSEST_ZOOM,
      maxPitch: 0,
      pitchWithRotate: false,
      attributionControl: false,
      locale: { 'Map.Title': say.map.canvas },
      fadeDuration: 0,
      canvasContextAttributes: { antialias: true },
    });
    this.#map.touchZoomRotate.disableRotation();
    this.#map.on('move', () => this.#look());
    this.#map.on('resize', () => this.#look());
    this.#map.on('error', ({ error }) => (this.fault = error.message));
    this.#look();
  }

  close(): void {
    this.#map.remove();
  }

  /** Where MapLibre keeps what moves with the map; what is put over the map goes in here, so that it drags along. */
  get frame(): HTMLElement {
    return this.#map.getCanvasContainer();
  }

  get canvas(): HTMLCanvasElement {
    return this.#map.getCanvas();
  }

  /** Draws a noun, or draws it anew: its source, and its layers from the bottom up. */
  show(noun: Noun, source: SourceSpecification, layers: readonly Layer[]): void {
    const map = this.#map;
    const content = source.type === 'geojson' ? source.data : JSON.stringify(source);
    if (content !== this.#contents[noun]) {
      const present = map.getSource<GeoJSONSource>(noun);
      if (present?.type === 'geojson' && source.type === 'geojson') {
        void present.setData(source.data);
      } else {
        this.hide(noun);
        map.addSource(noun, source);
      }
      this.#contents[noun] = content;
    }
    const above = this.#above(noun);
    for (const layer of layers) {
      const whole = { ...layer, source: noun } as LayerSpecification & { source: string };
      if (!map.getLayer(layer.id)) map.addLayer(whole, above);
      else this.#restyle(whole);
    }
  }

  hide(noun: Noun): void {
    for (const id of this.#layersOf(noun)) this.#map.removeLayer(id);
    if (this.#map.getSource(noun)) this.#map.removeSource(noun);
    delete this.#contents[noun];
  }

  paint(inks: Inks): void {
    this.#map.setPaintProperty('paper', 'background-color', inks.paper);
  }

  /** Pixels from the top left of a place; follows the camera. */
  at(lng: number, lat: number): readonly [x: number, y: number] {
    void this.camera;
    const { x, y } = this.#map.project([lng, lat]);
    return [x, y];
  }

  /** What is in the frame; follows the camera. */
  get bounds(): Bounds {
    void this.camera;
    const [[west, south], [east, north]] = this.#map.getBounds().toArray();
    return [west, south, east, north];
  }

  fit(bounds: Bounds): void {
    const corners = new LngLatBounds(bounds as [number, number, number, number]);
    const padding = this.camera.widthPx > WIDE_PX ? WIDE : NARROW;
    this.#map.fitBounds(corners, { padding, maxZoom: FIT_ZOOM, duration: 0 });
  }

  /** Closer or farther, round a place that is in the frame, else round the middle. */
  zoomBy(levels: number, around: { readonly lng: number; readonly lat: number } | null = null): void {
    const zoom = this.#map.getZoom() + levels;
    const kept = around !== null && this.#isInFrame(around.lng, around.lat) ? { around } : {};
    this.#map.easeTo({ zoom, ...kept, duration: 200 });
  }

  northUp(): void {
    this.#map.easeTo({ bearing: 0, duration: 200 });
  }

  /** Moves a place into the frame if it is not in it. */
  reveal(lng: number, lat: number): void {
    if (!this.#isInFrame(lng, lat)) this.#map.easeTo({ center: [lng, lat], duration: 300 });
  }

  #isInFrame(lng: number, lat: number): boolean {
    const { x, y } = this.#map.project([lng, lat]);
    const { clientWidth, clientHeight } = this.#map.getContainer();
    return x > FRAME_PX && y > FRAME_PX && x < clientWidth - FRAME_PX && y < clientHeight - FRAME_PX;
  }

  /** Calls back with the place under the pointer; null when it leaves. Presses on buttons over the map do not count. */
  onPointer(told: (kind: 'over' | 'press', lng: number, lat: number) => void, left: () => void): void {
    const say = (kind: 'over' | 'press') => (event: MapMouseEvent) => {
      const { target } = event.originalEvent;
      if (target instanceof Element && target.closest('button')) return;
      told(kind, event.lngLat.lng, event.lngLat.lat);
    };
    this.#map.on('mousemove', say('over'));
    this.#map.on('click', say('press'));
    this.#map.on('mouseout', left);
  }

  #look(): void {
    const { lng, lat } = this.#map.getCenter();
    const { clientWidth, clientHeight } = this.#map.getContainer();
    const zoom = this.#map.getZoom();
    this.camera = {
      lng,
      lat,
      zoom,
      bearingDeg: this.#map.getBearing(),
      widthPx: clientWidth,
      heightPx: clientHeight,
      metresPerPx: (metresPerDegree(lat).east * 360) / (WORLD_PX * 2 ** zoom),
    };
  }

  #layersOf(noun: Noun): string[] {
    return this.#map
      .getStyle()
      .layers.filter((layer) => 'source' in layer && layer.source === noun)
      .map(({ id }) => id);
  }

  /** The lowest layer of those nouns that lie above one; undefined when it is on top. */
  #above(noun: Noun): string | undefined {
    for (const higher of NOUNS.slice(NOUNS.indexOf(noun) + 1)) {
      const [lowest] = this.#layersOf(higher);
      if (lowest !== undefined) return lowest;
    }
    return undefined;
  }

  #restyle(layer: LayerSpecification): void {
    for (const [name, value] of Object.entries(layer.paint ?? {}))
      this.#map.setPaintProperty(layer.id, name as never, value as never);
    for (const [name, value] of Object.entries(layer.layout ?? {}))
      this.#map.setLayoutProperty(layer.id, name as never, value as never);
  }
}

/** Bare paper, with the fonts that labels are set in. */
function paper(inks: Inks): StyleSpecification {
  const file = (url: string) => [{ url: new URL(url, location.href).href, 'unicode-range': ['U+0-24FF'] }];
  return {
    version: 8,
    transition: { duration: 0, delay: 0 },
    'font-faces': { [TEXT_FONT[0]]: file(regular), [STRONG_FONT[0]]: file(semibold) },
    sources: {},
    layers: [{ id: 'paper', type: 'background', paint: { 'background-color': inks.paper } }],
  };
}
