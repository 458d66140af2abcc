import { de } from '../words/de/de.ts';
import { en } from '../words/en/en.ts';
import type { Language } from '../words/words.ts';
import { LANGUAGES, speak } from '../words/words.ts';

/*
 * A worker speaks the language that it is named for. It imports this first, as tables take their labels when they are
 * loaded, and has the words with it, as what is asked meanwhile would not wait for them.
 */
const { name } = self;
if (name in LANGUAGES) speak(name as Language, { en, de }[name as Language]);
