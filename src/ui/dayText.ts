import { spoken } from '../words/words.ts';

/** A day as people write it, where they are: `4 May 2025`. */
export function dayOf(ms: number): string {
  return new Date(ms).toLocaleDateString(spoken === 'en' ? 'en-GB' : spoken, {
    day: 'numeric',
    month: 'short',
    year: 'numeric',
  });
}

/** Day and time: `4 May 2025, 14:05`. */
export function momentOf(ms: number): string {
  return `${dayOf(ms)}, ${timeOf(ms)}`;
}

export function timeOf(ms: number): string {
  return new Date(ms).toLocaleTimeString(spoken === 'en' ? 'en-GB' : spoken, {
    hour: '2-digit',
    minute: '2-digit',
  });
}

/** As a date input has it, where one is: `2025-05-04`. */
export function dateInputOf(ms: number): string {
  const day = new Date(ms);
  const two = (n: number) => String(n).padStart(2, '0');
  return `${String(day.getFullYear()).padStart(4, '0')}-${two(day.getMonth() + 1)}-${two(day.getDate())}`;
}

/** When something was on a day out of a date input: `nowMs` where that is today or later, else noon of it; NaN for none. */
export function msOfDate(text: string, nowMs: number): number {
  const parts = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text);
  if (parts === null) return NaN;
  const noonMs = new Date(+parts[1], +parts[2] - 1, +parts[3], 12).getTime();
  return text === dateInputOf(nowMs) ? nowMs : Math.min(noonMs, nowMs);
}
