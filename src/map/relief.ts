import type { HillshadeLayerSpecification, LineLayerSpecification } from 'maplibre-gl';
import type { Inks, Scheme } from './inks.ts';

interface Relief {
  readonly shadow: string;
  readonly highlight: string;
  readonly exaggeration: number;
  readonly contour: string;
}

/** Shading faint enough to write on; in full sun fainter still, at night the light falls on near black. */
const RELIEFS: Readonly<Record<Scheme, Relief>> = {
  day: { shadow: '#6f7a72', highlight: '#ffffff', exaggeration: 0.32, contour: '#a08a62' },
  sun: { shadow: '#9a9a9a', highlight: '#ffffff', exaggeration: 0.2, contour: '#6b5a38' },
  night: { shadow: '#000000', highlight: '#3d4a50', exaggeration: 0.4, contour: '#6f6650' },
};

/** Light from the north-west, as on printed maps. */
export function shadeInk({ scheme }: Inks): HillshadeLayerSpecification['paint'] {
  const { shadow, highlight, exaggeration } = RELIEFS[scheme];
  return {
    'hillshade-method': 'standard',
    'hillshade-illumination-direction': 315,
    'hillshade-illumination-anchor': 'map',
    'hillshade-exaggeration': exaggeration,
    'hillshade-shadow-color': shadow,
    'hillshade-highlight-color': highlight,
    'hillshade-accent-color': shadow,
  };
}

export function contourInk({ scheme }: Inks): LineLayerSpecification['paint'] {
  return {
    'line-color': RELIEFS[scheme].contour,
    'line-width': ['match', ['get', 'level'], 1, 1.3, 0.6],
    'line-opacity': ['match', ['get', 'level'], 1, 0.95, 0.75],
  };
}
