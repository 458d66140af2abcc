import type { Language } from '../words/words.ts';
import { languageFor } from '../words/words.ts';

const KEY = 'rutline.language';

/** The language chosen on this device, else the one that the browser asks for. */
export function languageWanted(): Language {
  const chosen = keptLanguage();
  return languageFor(chosen === null ? navigator.languages : [chosen]);
}

/** Speaks another language from the next loading of the page on. */
export function keepLanguage(language: Language): void {
  try {
    localStorage.setItem(KEY, language);
  } catch {
    return;
  }
}

function keptLanguage(): string | null {
  try {
    return localStorage.getItem(KEY);
  } catch {
    return null;
  }
}
