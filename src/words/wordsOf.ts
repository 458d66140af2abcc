import type { Language, Words } from './words.ts';

/** The texts of a language, fetched. */
export async function wordsOf(language: Language): Promise<Words> {
  return language === 'de' ? (await import('./de/de.ts')).de : (await import('./en/en.ts')).en;
}
