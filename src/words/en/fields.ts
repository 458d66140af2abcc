/** What is wrong with a value, and a field's name within a sentence. */
export const fields = {
  within: (label: string) => label.toLowerCase(),
  notANumber: (label: string) => `${label} must be a number.`,
  outside: (label: string, is: string, from: string, to: string) =>
    `${label} is ${is}; it must lie between ${from} and ${to}.`,
  /** Choices as they stand in a file: no form offers another one. */
  notAChoice: (label: string, choices: string) => `${label} must be one of: ${choices}.`,
  notAFlag: (label: string) => `${label} must be yes or no.`,
  correct: (sentence: string) => `Correct it: ${sentence}`,
};
