import type { Words } from '../words.ts';
import { desks } from './desks.ts';

/** Every text in German. */
export const de: Words = { desks };
