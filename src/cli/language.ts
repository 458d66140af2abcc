import { parseArgs } from 'node:util';
import type { Language } from '../words/words.ts';
import { LANGUAGES } from '../words/words.ts';

/** The language that `brief` is asked for; English for every other command, and where no such language is named. */
export function languageFrom([command, ...rest]: readonly string[]): Language {
  if (command !== 'brief') return 'en';
  const { language } = parseArgs({
    args: rest,
    strict: false,
    options: { language: { type: 'string' } },
  }).values;
  return isLanguage(language) ? language : 'en';
}

export function isLanguage(name: unknown): name is Language {
  return typeof name === 'string' && Object.hasOwn(LANGUAGES, name);
}
