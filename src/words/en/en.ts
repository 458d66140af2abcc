import { desks } from './desks.ts';
import { names } from './names.ts';

/** Every text in English, section by section. */
export const en = { ...names, desks };
