const DAY_MS = 86_400_000;

/** Thousandths of the second after noon keep several of one day in their order. */
const PLACES = 1000;

/**
 * A date without a time of day, as a moment: noon of the day (UTC), which is the same day almost everywhere. `place` is how
 * many of that day come before it, 0 to 999.
 */
export function dateOnly(ms: number, place = 0): number {
  return (Math.floor(ms / DAY_MS) + 0.5) * DAY_MS + Math.min(place, PLACES - 1);
}

export function isDateOnly(ms: number): boolean {
  const afterNoonMs = ms - dateOnly(ms);
  return 0 <= afterNoonMs && afterNoonMs < PLACES;
}

export function sameUtcDay(oneMs: number, otherMs: number): boolean {
  return dateOnly(oneMs) === dateOnly(otherMs);
}

/** Whether two moments are of one day where people are; a date without a time of day is that day everywhere. */
export function sameDay(oneMs: number, otherMs: number): boolean {
  return dayOf(oneMs) === dayOf(otherMs);
}

function dayOf(ms: number): string {
  const day = new Date(ms);
  if (isDateOnly(ms)) return `${day.getUTCFullYear()}-${day.getUTCMonth()}-${day.getUTCDate()}`;
  return `${day.getFullYear()}-${day.getMonth()}-${day.getDate()}`;
}
