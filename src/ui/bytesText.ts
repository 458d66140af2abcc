import { spoken } from '../words/words.ts';

const UNITS = ['B', 'KB', 'MB', 'GB'];

/** A count of bytes as people read it, in powers of 1,000: `24 KB`. */
export function bytesText(count: number): string {
  const power = count < 1 ? 0 : Math.min(UNITS.length - 1, Math.floor(Math.log10(count) / 3));
  const value = (count / 1000 ** power).toLocaleString(spoken, { maximumSignificantDigits: 2 });
  return `${value} ${UNITS[power]}`;
}
