import type { Words } from '../words.ts';
import { desks } from './desks.ts';
import { names } from './names.ts';

/** Every text in German. */
export const de: Words = { ...names, desks };
