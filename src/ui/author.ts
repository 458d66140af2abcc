import type { Author } from '../archive/replica.ts';
import { surveyor } from './surveyor.ts';

/** Who works on this device, at this moment. */
export function authorNow(): Author {
  return { by: surveyor(), atMs: Date.now() };
}
