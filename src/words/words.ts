import { en } from './en/en.ts';

/** The languages there are, each by its own name. */
export const LANGUAGES = { en: 'English', de: 'Deutsch' } as const;

export type Language = keyof typeof LANGUAGES;

/** Texts of any language in place of those of English; what a text is made from stays the same. */
export type Said<T> = T extends string
  ? string
  : T extends (...given: infer Given) => string
    ? (...given: Given) => string
    : { readonly [K in keyof T]: Said<T[K]> };

/** Every text of the program in one language; the English ones give the type, so that none can be missing. */
export type Words = Said<typeof en>;

/** Every text, in the language that is spoken. The page has none before it speaks one. */
export let say: Words = en;

/** The language that is spoken. */
export let spoken: Language = 'en';

/**
 * Speaks a language from now on. Tables keep their labels from when they are loaded: this must be said first, and a page
 * is loaded again to speak another one.
 */
export function speak(language: Language, words: Words): void {
  spoken = language;
  say = words;
}

/** The first of the wanted languages (BCP 47 tags, such as `de-AT`) that there is, else English. */
export function languageFor(wanted: readonly string[]): Language {
  const bases = wanted.map((tag) => tag.toLowerCase().split('-')[0]);
  return bases.find((base): base is Language => base in LANGUAGES) ?? 'en';
}
