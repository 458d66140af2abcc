import type { Language } from '../words/words.ts';
import { languageFor, LANGUAGES } from '../words/words.ts';

const KEY = 'rutline.language';

/** The language chosen on this device, else the one that the browser asks for. */
export function languageWanted(): Language {
  return keptLanguage() ?? languageFor(navigator.languages);
}

/** Speaks another language, or with null the device's own, from the next loading of the page on. */
export function keepLanguage(language: Language | null): void {
  try {
    if (language === null) localStorage.removeItem(KEY);
    else localStorage.setItem(KEY, language);
  } catch {
    return;
  }
}

/** The language that was chosen; null for the device's own. */
export function keptLanguage(): Language | null {
  try {
    const chosen = localStorage.getItem(KEY);
    return chosen !== null && chosen in LANGUAGES ? (chosen as Language) : null;
  } catch {
    return null;
  }
}
