import { readFileSync, readdirSync } from 'node:fs';
import { relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import type { Source } from './layers.ts';
import { MAY_IMPORT, importFaults, worldFaults } from './layers.ts';

const SRC = fileURLToPath(new URL('../src/', import.meta.url));

const sources: Source[] = readdirSync(SRC, { recursive: true, withFileTypes: true })
  .filter((entry) => entry.isFile() && /\.(ts|svelte)$/.test(entry.name))
  .map((entry) => `${entry.parentPath}/${entry.name}`)
  .map((file) => ({ path: relative(SRC, file).replaceAll('\\', '/'), text: readFileSync(file, 'utf8') }));

describe('src', () => {
  test('imports one way, and libraries by their one door', () => {
    expect(importFaults(sources)).toEqual([]);
  });

  test('keeps the world out of its core', () => {
    expect(worldFaults(sources)).toEqual([]);
  });

  test('is looked at whole', () => {
    expect(sources.length).toBeGreaterThan(50);
    expect(sources.some(({ path }) => path.endsWith('.svelte'))).toBe(true);
    expect(sources.map(({ path }) => path)).toContain('archive/store.ts');
  });
});

test('each folder may import only folders above it', () => {
  const order = Object.keys(MAY_IMPORT);
  for (const [folder, may] of Object.entries(MAY_IMPORT))
    for (const other of may)
      expect(order.indexOf(other), `${folder} → ${other}`).toBeLessThan(order.indexOf(folder));
});

describe('an import against the table is found', () => {
  test.each([
    ['vehicle/tyre.ts', `import { heightM } from '../terrain/rut.ts';`],
    ['vehicle/tyre.ts', `import type { Rut } from '../terrain/rut.ts';`],
    ['vehicle/tyre.ts', `export * from '../terrain/rut.ts';`],
    ['vehicle/tyre.ts', `let rut: import('../terrain/rut.ts').Rut;`],
    ['vehicle/tyre.ts', `const later = () => import('../terrain/rut.ts');`],
    ['workers/pool.ts', `new Worker(new URL('../ui/App.ts', import.meta.url));`],
    ['workers/pool.ts', `import Made from '../map/keep.worker.ts?worker';`],
    ['archive/share.ts', `import { edit } from '../ui/trip.svelte.ts';`],
    ['ui/App.svelte', `<script lang="ts">import { run } from '../cli/rutline.ts';</script><p>x</p>`],
    ['map/Base.svelte', `<script module lang="ts">import { read } from '../archive/share.ts';</script>`],
    ['units.ts', `import { track } from './route/track.ts';`],
    ['route/track.ts', `import '../main.ts';`],
    ['route/track.ts', `import place from '../../data/demo/place.ts';`],
    ['services/all.ts', `import { track } from '../route/track.ts';`],
    ['terrain/line.ts', `import { distance } from '@turf/turf';`],
    ['ui/Map.ts', `import { Map } from 'maplibre-gl';`],
    ['ui/trip.ts', `import { openDB } from 'idb';`],
    ['archive/share.ts', `import { gzipSync } from 'fflate';`],
    ['route/gpx.ts', `import { readFileSync } from 'node:fs';`],
    ['route/gpx.ts', `import _ from 'lodash';`],
    ['convoy/matrix.ts', `import { tick } from 'svelte';`],
  ])('%s: %s', (path, text) => {
    expect(importFaults([{ path, text }])).toHaveLength(1);
  });

  test('and one along it is not', () => {
    const text = `import { rad } from '../units.ts'; import type { Rut } from '../terrain/rut.ts'; import './x.ts';`;
    expect(importFaults([{ path: 'traverse/wheel.ts', text }])).toEqual([]);
  });
});

describe('a use of the world by the core is found', () => {
  test.each([
    'document.title',
    'window.x',
    'void fetch("a")',
    'console.log(1)',
    'const t = Date.now();',
    'const t = new Date();',
    'const t = Date();',
    'const r = Math.random();',
    'const { random } = globalThis.Math;',
    'const p = performance.now();',
    'const all = { document };',
    'if (typeof window !== "undefined") throw 1;',
    'function f(window: number) { return window; } f(window);',
    'setTimeout(() => 1, 0)',
  ])('%s', (text) => {
    expect(worldFaults([{ path: 'route/slope.ts', text: `${text}\nexport {};` }])).not.toEqual([]);
  });

  test.each([
    'export function mean(window: Float64Array) { return window[0]; }',
    'export const day = new Date(0).toISOString();',
    'export const noon = Date.UTC(2000, 0, 1);',
    'export const page = { document: 1, console: 2 }.document;',
    'export interface Fix { readonly location: string }',
    'export const root = Math.sqrt(2);',
  ])('but not in %s', (text) => {
    expect(worldFaults([{ path: 'route/slope.ts', text }])).toEqual([]);
  });

  test('but the door of the store may', () => {
    const text = 'export const there = typeof indexedDB;';
    expect(worldFaults([{ path: 'archive/store.ts', text }])).toEqual([]);
    expect(worldFaults([{ path: 'archive/share.ts', text }])).toHaveLength(1);
  });
});
