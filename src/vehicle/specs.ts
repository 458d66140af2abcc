import type { FieldTable, Values } from '../field.ts';
import { choice, flag, number } from '../field.ts';
import { say } from '../words/words.ts';

export const AXLE_KINDS = ['beam', 'independent'] as const;
export const DIFFERENTIALS = ['open', 'limited slip', 'locker'] as const;
const BRAKE_TRACTION = ['none', 'late', 'average', 'early'] as const;

/**
 * Everything Rutline knows of a vehicle: name, unit, range and sentence, written once. It gives the type, the check,
 * the form and the help text. Heights are from level ground at the loaded ride height and the pressure entered.
 */
export const bodyFields = {
  widthM: number(say.vehicleFields.widthM, 'length', 1.2, 2.8),
  heightM: number(say.vehicleFields.heightM, 'length', 1.2, 4),
  frontOverhangM: number(say.vehicleFields.frontOverhangM, 'length', 0.3, 1.8),
  rearOverhangM: number(say.vehicleFields.rearOverhangM, 'length', 0.3, 2.5),
  approachRad: number(say.vehicleFields.approachRad, 'angle', 0.1, 1.2),
  rampoverRad: number(say.vehicleFields.rampoverRad, 'angle', 0.1, 1),
  departureRad: number(say.vehicleFields.departureRad, 'angle', 0.1, 1.2),
  bellyHeightM: number(say.vehicleFields.bellyHeightM, 'size', 0.08, 0.8),
  sillHeightM: number(say.vehicleFields.sillHeightM, 'size', 0.1, 1),
} satisfies FieldTable;

export const axleFields = {
  wheelbaseM: number(say.vehicleFields.wheelbaseM, 'length', 1.8, 4.5),
  frontTrackWidthM: number(say.vehicleFields.frontTrackWidthM, 'length', 1, 2.1),
  rearTrackWidthM: number(say.vehicleFields.rearTrackWidthM, 'length', 1, 2.1),
  frontAxle: choice(say.vehicleFields.frontAxle, AXLE_KINDS),
  rearAxle: choice(say.vehicleFields.rearAxle, AXLE_KINDS),
  frontDifferentialHeightM: number(say.vehicleFields.frontDifferentialHeightM, 'size', 0.1, 0.6),
  frontDifferentialYM: number(say.vehicleFields.frontDifferentialYM, 'size', -0.7, 0.7),
  rearDifferentialHeightM: number(say.vehicleFields.rearDifferentialHeightM, 'size', 0.1, 0.6),
  rearDifferentialYM: number(say.vehicleFields.rearDifferentialYM, 'size', -0.7, 0.7),
  frontBumpM: number(say.vehicleFields.frontBumpM, 'size', 0.02, 0.4),
  frontDroopM: number(say.vehicleFields.frontDroopM, 'size', 0.02, 0.5),
  rearBumpM: number(say.vehicleFields.rearBumpM, 'size', 0.02, 0.4),
  rearDroopM: number(say.vehicleFields.rearDroopM, 'size', 0.02, 0.5),
  frontRideHz: number(say.vehicleFields.frontRideHz, 'frequency', 0.7, 3),
  rearRideHz: number(say.vehicleFields.rearRideHz, 'frequency', 0.7, 3),
  frontAntiRollNmPerRad: number(say.vehicleFields.frontAntiRollNmPerRad, 'rollStiffness', 0, 120e3),
  rearAntiRollNmPerRad: number(say.vehicleFields.rearAntiRollNmPerRad, 'rollStiffness', 0, 120e3),
  antiRollDisconnects: flag(say.vehicleFields.antiRollDisconnects),
  turningCircleM: number(say.vehicleFields.turningCircleM, 'length', 7, 20),
} satisfies FieldTable;

export const massFields = {
  massKg: number(say.vehicleFields.massKg, 'mass', 600, 6000),
  frontShare: number(say.vehicleFields.frontShare, 'share', 0.3, 0.7),
  massHeightM: number(say.vehicleFields.massHeightM, 'size', 0.4, 1.4),
  roofLoadKg: number(say.vehicleFields.roofLoadKg, 'mass', 0, 400),
  roofLoadHeightM: number(say.vehicleFields.roofLoadHeightM, 'length', 1.2, 3.5),
} satisfies FieldTable;

export const tyreFields = {
  tyreDiameterM: number(say.vehicleFields.tyreDiameterM, 'size', 0.5, 1.2),
  tyreSectionM: number(say.vehicleFields.tyreSectionM, 'size', 0.14, 0.5),
  tyrePattern: choice(say.vehicleFields.tyrePattern, ['road', 'all-terrain', 'mud-terrain']),
  tyrePressurePa: number(say.vehicleFields.tyrePressurePa, 'pressure', 60e3, 500e3),
  lowPressurePa: number(say.vehicleFields.lowPressurePa, 'pressure', 50e3, 500e3),
  tyreStiffnessNPerM: number(say.vehicleFields.tyreStiffnessNPerM, 'stiffness', 80e3, 600e3),
} satisfies FieldTable;

export const drivelineFields = {
  drive: choice(say.vehicleFields.drive, [
    'part-time four',
    'full-time four',
    'on-demand four',
    'front',
    'rear',
  ]),
  centre: choice(say.vehicleFields.centre, ['none', 'open', 'limited slip', 'lockable']),
  lowRangeRatio: number(say.vehicleFields.lowRangeRatio, 'number', 1, 5),
  crawlRatio: number(say.vehicleFields.crawlRatio, 'number', 8, 150),
  engineTorqueNm: number(say.vehicleFields.engineTorqueNm, 'torque', 60, 1200),
  frontDifferential: choice(say.vehicleFields.frontDifferential, DIFFERENTIALS),
  frontBias: number(say.vehicleFields.frontBias, 'number', 1, 5),
  rearDifferential: choice(say.vehicleFields.rearDifferential, DIFFERENTIALS),
  rearBias: number(say.vehicleFields.rearBias, 'number', 1, 5),
  brakeTraction: choice(say.vehicleFields.brakeTraction, BRAKE_TRACTION),
  engineTraction: choice(say.vehicleFields.engineTraction, [
    'none',
    'always on',
    'off in low range',
    'off with centre locked',
  ]),
  stabilityControl: choice(say.vehicleFields.stabilityControl, [
    'none',
    'always on',
    'off in low range',
    'off with centre locked',
  ]),
  hillDescent: flag(say.vehicleFields.hillDescent),
} satisfies FieldTable;

export const waterFields = {
  wadingDepthM: number(say.vehicleFields.wadingDepthM, 'size', 0.1, 1.2),
  floorHeightM: number(say.vehicleFields.floorHeightM, 'size', 0.2, 1),
} satisfies FieldTable;

export const recoveryFields = {
  frontPointN: number(say.vehicleFields.frontPointN, 'force', 0, 200e3),
  rearPointN: number(say.vehicleFields.rearPointN, 'force', 0, 200e3),
  winchN: number(say.vehicleFields.winchN, 'force', 0, 150e3),
  ropeM: number(say.vehicleFields.ropeM, 'length', 0, 60),
  straps: flag(say.vehicleFields.straps),
  boards: flag(say.vehicleFields.boards),
} satisfies FieldTable;

export const vehicleFields = {
  ...bodyFields,
  ...axleFields,
  ...massFields,
  ...tyreFields,
  ...drivelineFields,
  ...waterFields,
  ...recoveryFields,
} satisfies FieldTable;

export type VehicleField = keyof typeof vehicleFields;

export type VehicleValues = Values<typeof vehicleFields>;
