import type { Words } from '../words.ts';

export const fields: Words['fields'] = {
  within: (label) => label,
  notANumber: (label) => `${label}: Das muss eine Zahl sein.`,
  outside: (label, is, from, to) =>
    `${label}: ${is} geht nicht, der Wert muss zwischen ${from} und ${to} liegen.`,
  notAChoice: (label, choices) => `${label}: Das muss eines davon sein: ${choices}.`,
  notAFlag: (label) => `${label}: Das muss ja (true) oder nein (false) sein.`,
  correct: (sentence) => `Verbessern: ${sentence}`,
};
