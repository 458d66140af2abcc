/** Powers of ten that a double holds exactly. */
const TEN = Array.from({ length: 23 }, (_, n) => Number(`1e${n}`));

const ZERO = 48;
const MINUS = 45;
const POINT = 46;
const COLON = 58;
const LETTER_T = 84;
const LETTER_Z = 90;

const DECIMAL = /^[+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:e[+-]?\d+)?$/i;

/**
 * The value of a decimal number, NaN for anything else: comma decimals, `NaN`, `Infinity`, hexadecimal, nothing.
 * Exponents are not xsd:decimal, but real files have them.
 *
 * Up to 15 digits the integer of all digits and the power of ten are both exact, so one division rounds
 * correctly (W. D. Clinger, How to Read Floating Point Numbers Accurately, 1990); the rest goes to `Number`.
 */
export function decimal(text: string): number {
  let digits = 0;
  let decimals = 0;
  let value = 0;
  let point = false;
  const negative = text.charCodeAt(0) === MINUS;
  for (let i = negative ? 1 : 0; i < text.length; i++) {
    const code = text.charCodeAt(i);
    const digit = code - ZERO;
    if (digit >= 0 && digit <= 9) {
      value = value * 10 + digit;
      digits++;
      if (point) decimals++;
    } else if (code === POINT && !point) {
      point = true;
    } else {
      return unusual(text);
    }
  }
  if (digits === 0 || digits > 15) return unusual(text);
  const magnitude = value / TEN[decimals];
  return negative ? -magnitude : magnitude;
}

function unusual(text: string): number {
  const trimmed = text.trim();
  const value = DECIMAL.test(trimmed) ? Number(trimmed) : NaN;
  return Number.isFinite(value) ? value : NaN;
}

/**
 * Seconds since 1970-01-01T00:00:00Z of an xsd:dateTime (XML Schema Part 2, 2nd ed., 2004, 3.2.7) of the years
 * 0000 to 9999; NaN for anything else. Without a zone it is taken as UTC.
 */
export function timeS(text: string): number {
  const exact = bareTimeS(text);
  return Number.isNaN(exact) ? bareTimeS(text.trim()) : exact;
}

/** Whether a time that `timeS` understands says its zone. */
export function hasZone(text: string): boolean {
  return text.charCodeAt(text.length - 1) === LETTER_Z || /(?:Z|[+-]\d\d:\d\d)\s*$/.test(text);
}

function bareTimeS(text: string): number {
  const year = 100 * twoDigits(text, 0) + twoDigits(text, 2);
  const month = twoDigits(text, 5);
  const day = twoDigits(text, 8);
  const hour = twoDigits(text, 11);
  const minute = twoDigits(text, 14);
  const second = twoDigits(text, 17);
  const inShape =
    text.charCodeAt(4) === MINUS &&
    text.charCodeAt(7) === MINUS &&
    text.charCodeAt(10) === LETTER_T &&
    text.charCodeAt(13) === COLON &&
    text.charCodeAt(16) === COLON;
  const inRange =
    month >= 1 && month <= 12 && day >= 1 && day <= daysIn(year, month) && minute < 60 && second <= 60;
  const inDay = hour < 24 || (hour === 24 && minute === 0 && second === 0);
  if (!inShape || !inRange || !inDay) return NaN;
  const whole = daysSince1970(year, month, day) * 86_400 + hour * 3_600 + minute * 60 + second;
  return text.length === 20 && text.charCodeAt(19) === LETTER_Z
    ? whole
    : whole + fractionLessZoneS(text.slice(19));
}

function fractionLessZoneS(rest: string): number {
  const match = /^(\.\d+)?(?:Z|([+-])(\d\d):(\d\d))?$/.exec(rest);
  if (!match) return NaN;
  const [, fraction = '0', sign, hours = '0', minutes = '0'] = match;
  const zoneS = Number(hours) * 3_600 + Number(minutes) * 60;
  return Number(fraction) - (sign === '-' ? -zoneS : zoneS);
}

/** NaN where there are not two digits. */
function twoDigits(text: string, at: number): number {
  const tens = text.charCodeAt(at) - ZERO;
  const ones = text.charCodeAt(at + 1) - ZERO;
  return tens >= 0 && tens <= 9 && ones >= 0 && ones <= 9 ? tens * 10 + ones : NaN;
}

function daysIn(year: number, month: number): number {
  if (month !== 2) return month === 4 || month === 6 || month === 9 || month === 11 ? 30 : 31;
  return year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0) ? 29 : 28;
}

/** H. Hinnant, chrono-Compatible Low-Level Date Algorithms (2013), days_from_civil. */
function daysSince1970(year: number, month: number, day: number): number {
  const y = month <= 2 ? year - 1 : year;
  const era = Math.floor(y / 400);
  const yearOfEra = y - era * 400;
  const dayOfYear = Math.floor((153 * (month + (month > 2 ? -3 : 9)) + 2) / 5) + day - 1;
  const dayOfEra = yearOfEra * 365 + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100) + dayOfYear;
  return era * 146_097 + dayOfEra - 719_468;
}
