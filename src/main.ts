import { languageWanted } from './ui/languageWanted.ts';
import { speak } from './words/words.ts';
import { wordsOf } from './words/wordsOf.ts';

const language = languageWanted();
speak(language, await wordsOf(language));
document.documentElement.lang = language;
// Only now: tables take their labels when they are loaded.
const { begin } = await import('./ui/begin.ts');
await begin();
