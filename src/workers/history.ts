import wasm from '@automerge/automerge/automerge.wasm?url';
import { startReplicas } from '../archive/replica.ts';

/** The engine that keeps histories, fetched when a worker first needs one. */
export function startHistory(): Promise<unknown> {
  return startReplicas(() => fetch(wasm));
}
