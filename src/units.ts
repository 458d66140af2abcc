/** The one place where SI meets what people read and type. Inside the program everything is SI and radians. */

import { say, spoken } from './words/words.ts';

export type System = 'metric' | 'imperial';

interface Unit {
  readonly label: string;
  /** How many of this unit make one SI unit. */
  readonly perSi: number;
  readonly digits: number;
}

const METRES_PER_FOOT = 0.3048;
const METRES_PER_MILE = 1609.344;
const KILOGRAMS_PER_POUND = 0.45359237;
const NEWTONS_PER_POUND_FORCE = 4.4482216152605;
const PASCALS_PER_PSI = 6894.757293168;
const DEGREES_PER_RADIAN = 180 / Math.PI;

function both(unit: Unit): Record<System, Unit> {
  return { metric: unit, imperial: unit };
}

/** What a number is, and so the unit it is shown and typed in. */
const QUANTITIES = {
  distance: {
    metric: { label: 'km', perSi: 1 / 1000, digits: 2 },
    imperial: { label: 'mi', perSi: 1 / METRES_PER_MILE, digits: 2 },
  },
  length: {
    metric: { label: 'm', perSi: 1, digits: 2 },
    imperial: { label: 'ft', perSi: 1 / METRES_PER_FOOT, digits: 1 },
  },
  /** What a tape reads at an obstacle or under a vehicle. */
  size: {
    metric: { label: 'cm', perSi: 100, digits: 0 },
    imperial: { label: 'in', perSi: 12 / METRES_PER_FOOT, digits: 1 },
  },
  angle: both({ label: '°', perSi: DEGREES_PER_RADIAN, digits: 1 }),
  mass: {
    metric: { label: 'kg', perSi: 1, digits: 0 },
    imperial: { label: 'lb', perSi: 1 / KILOGRAMS_PER_POUND, digits: 0 },
  },
  force: {
    metric: { label: 'kN', perSi: 1 / 1000, digits: 1 },
    imperial: { label: 'lbf', perSi: 1 / NEWTONS_PER_POUND_FORCE, digits: 0 },
  },
  pressure: {
    metric: { label: 'kPa', perSi: 1 / 1000, digits: 0 },
    imperial: { label: 'psi', perSi: 1 / PASCALS_PER_PSI, digits: 0 },
  },
  torque: {
    metric: { label: 'N·m', perSi: 1, digits: 0 },
    imperial: { label: 'lb·ft', perSi: 1 / (NEWTONS_PER_POUND_FORCE * METRES_PER_FOOT), digits: 0 },
  },
  speed: {
    metric: { label: 'km/h', perSi: 3.6, digits: 0 },
    imperial: { label: 'mph', perSi: 3600 / METRES_PER_MILE, digits: 0 },
  },
  /** Water: people judge it in metres (feet) a second. */
  flow: {
    metric: { label: 'm/s', perSi: 1, digits: 1 },
    imperial: { label: 'ft/s', perSi: 1 / METRES_PER_FOOT, digits: 1 },
  },
  depthFlow: {
    metric: { label: 'm²/s', perSi: 1, digits: 2 },
    imperial: { label: 'ft²/s', perSi: 1 / METRES_PER_FOOT ** 2, digits: 1 },
  },
  frequency: both({ label: 'Hz', perSi: 1, digits: 2 }),
  stiffness: {
    metric: { label: 'N/mm', perSi: 1 / 1000, digits: 0 },
    imperial: { label: 'lbf/in', perSi: METRES_PER_FOOT / 12 / NEWTONS_PER_POUND_FORCE, digits: 0 },
  },
  rollStiffness: both({ label: 'N·m/°', perSi: 1 / DEGREES_PER_RADIAN, digits: 0 }),
  /** A share of one, read as percent. */
  share: both({ label: '%', perSi: 100, digits: 0 }),
  number: both({ label: '', perSi: 1, digits: 2 }),
} as const satisfies Record<string, Record<System, Unit>>;

export type Quantity = keyof typeof QUANTITIES;

export function unitLabel(quantity: Quantity, system: System): string {
  return QUANTITIES[quantity][system].label;
}

/** The number a person would read for an SI value, rounded to what matters in that unit. */
export function toShown(valueSi: number, quantity: Quantity, system: System): number {
  const { perSi, digits } = QUANTITIES[quantity][system];
  return Number((valueSi * perSi).toFixed(digits));
}

/** The SI value of a number a person typed. */
export function fromShown(shown: number, quantity: Quantity, system: System): number {
  return shown / QUANTITIES[quantity][system].perSi;
}

/** Digits as the language writes them: with its decimal sign and a true minus, and nothing below zero that is zero. */
export function written(digits: string): string {
  return digits
    .replace(/^-(0(?:\.0+)?)$/, '$1')
    .replace('-', '−')
    .replace('.', say.units.decimal);
}

/** A count, with thousands as the language parts them. */
export function counted(count: number): string {
  return count.toLocaleString(spoken);
}

/** Value and unit, such as `35 cm`, `2.4 m`, `18°`, `64 %`; an unknown (NaN) value says so. */
export function shown(valueSi: number, quantity: Quantity, system: System): string {
  if (Number.isNaN(valueSi)) return say.units.unknown;
  const { label, perSi, digits } = QUANTITIES[quantity][system];
  const text = written((valueSi * perSi).toFixed(digits));
  return label === '' || label === '°' ? text + label : `${text} ${label}`;
}

/** As `shown`, without zeros behind the decimal sign: `5 m`, `2.50 m`. */
export function shownShort(valueSi: number, quantity: Quantity, system: System): string {
  return shown(valueSi, quantity, system).replace(/[.,]0+(?=\D|$)/, '');
}

/** As `shown`, in whole units, for what is not known any better: `690 m`, `33 ft`. */
export function round(valueSi: number, quantity: Quantity, system: System): string {
  if (Number.isNaN(valueSi)) return say.units.unknown;
  const { label, perSi } = QUANTITIES[quantity][system];
  return `${counted(Math.round(valueSi * perSi))} ${label}`.replace('-', '−');
}

/** Steepness the three ways people say it, such as `18.0°, 32 %, 1 in 3.1`. */
export function slopeText(slopeRad: number): string {
  if (Number.isNaN(slopeRad)) return say.units.unknown;
  const tangent = Math.tan(slopeRad);
  const oneIn =
    Math.abs(tangent) < 0.005 ? say.units.level : say.units.oneIn(written(Math.abs(1 / tangent).toFixed(1)));
  return `${shown(slopeRad, 'angle', 'metric')}, ${percentText(slopeRad)}, ${oneIn}`;
}

/** Steepness within a sentence, such as `18.0° (32 %)`. */
export function steepText(slopeRad: number): string {
  if (Number.isNaN(slopeRad)) return say.units.unknown;
  return `${shown(slopeRad, 'angle', 'metric')} (${percentText(slopeRad)})`;
}

/** Steepness as rise to run in percent: 45° is `100 %`. */
export function percentText(slopeRad: number): string {
  return shown(Math.tan(slopeRad), 'share', 'metric');
}

/** The steepness, radians, of a rise in percent of the run. */
export function fromPercent(percent: number): number {
  return Math.atan(percent / 100);
}

export function rad(degrees: number): number {
  return degrees / DEGREES_PER_RADIAN;
}

export function degrees(valueRad: number): number {
  return valueRad * DEGREES_PER_RADIAN;
}
