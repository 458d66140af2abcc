import { speak } from '../words/words.ts';
import { wordsOf } from '../words/wordsOf.ts';
import { languageFrom } from './language.ts';

const args = process.argv.slice(2);

/** What is printed may be in another language, which must be spoken before anything that keeps its texts is loaded. */
const language = languageFrom(args);
speak(language, await wordsOf(language));
const { run } = await import('./run.ts');
process.exitCode = await run(args);
