import { desks } from './desks.ts';

/** Every text in English, section by section. */
export const en = { desks };
