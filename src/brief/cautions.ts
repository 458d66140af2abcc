import { say } from '../words/words.ts';

/** What is said before every convoy sets off. Common practice, no source; local rules and trained people come first. */
export const CAUTIONS: readonly string[] = say.cautions;
