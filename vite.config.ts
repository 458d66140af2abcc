import { availableParallelism } from 'node:os';
import { svelte } from '@sveltejs/vite-plugin-svelte';
import { defineConfig } from 'vitest/config';
import { licences } from './src/build/licences.ts';
import { offline } from './src/build/offline.ts';
import { oneLanguage } from './src/build/oneLanguage.ts';
import { policy } from './src/build/policy.ts';
import { LongestFirst } from './tests/longestFirst.ts';

/** Tests that change what others find, such as the language that is spoken or what the platform has, or load modules anew. */
const ALONE = 'tests/**/*.alone.test.ts';

export default defineConfig({
  plugins: [svelte(), oneLanguage(), licences(), offline('src/offline/serviceWorker.ts'), policy()],
  base: './',
  worker: { format: 'es' },
  optimizeDeps: {
    exclude: ['maplibre-gl', '@sqlite.org/sqlite-wasm'],
    // What only workers and later desks import: met there first, each would load the page again under somebody's hands.
    include: [
      '@automerge/automerge/slim',
      '@noble/hashes/sha2.js',
      '@noble/hashes/utils.js',
      '@streamparser/json',
      '@turf/turf',
      'exifr/dist/lite.esm.mjs',
      'fflate',
      'flatbush',
      'geotiff',
      'idb',
      'maplibre-contour',
      'pmtiles',
      'proj4',
      'saxes',
    ],
  },
  build: { target: 'es2022', chunkSizeWarningLimit: 1200 },
  test: {
    // One more than there are cores, as a test waits for its browser now and then.
    maxWorkers: availableParallelism() + 1,
    sequence: { sequencer: LongestFirst },
    projects: [
      {
        extends: true,
        test: {
          name: 'unit',
          environment: 'node',
          include: ['tests/**/*.test.ts'],
          exclude: ['tests/e2e/**', ALONE],
          // Modules are loaded once for all files: a third of the time would go into loading them.
          isolate: false,
          globalSetup: ['tests/cli/bundle.ts'],
          testTimeout: 120_000,
          hookTimeout: 120_000,
        },
      },
      {
        extends: true,
        test: {
          name: 'alone',
          environment: 'node',
          include: [ALONE],
          testTimeout: 120_000,
          hookTimeout: 120_000,
        },
      },
      {
        extends: true,
        test: {
          name: 'browser',
          environment: 'node',
          isolate: false,
          include: ['tests/e2e/**/*.test.ts'],
          globalSetup: ['tests/e2e/serve.ts', 'tests/cli/bundle.ts'],
          testTimeout: 300_000,
          hookTimeout: 120_000,
          expect: { poll: { timeout: 30_000 } },
        },
      },
    ],
  },
});
