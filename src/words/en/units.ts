/** How numbers are written, and what is said of steepness. */
export const units = {
  decimal: '.',
  unknown: 'not known',
  level: 'level',
  oneIn: (run: string) => `1 in ${run}`,
};
