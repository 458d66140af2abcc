import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';

/** The code of the engine that keeps histories. */
export function engineBytes(): Uint8Array {
  return readFileSync(createRequire(import.meta.url).resolve('@automerge/automerge/automerge.wasm'));
}
