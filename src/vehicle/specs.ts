import type { FieldTable, Values } from '../field.ts';
import { choice, flag, number } from '../field.ts';

export const AXLE_KINDS = ['beam', 'independent'] as const;
export const DIFFERENTIALS = ['open', 'limited slip', 'locker'] as const;
const BRAKE_TRACTION = ['none', 'late', 'average', 'early'] as const;

/**
 * Everything Rutline knows of a vehicle: name, unit, range and sentence, written once. It gives the type, the check,
 * the form and the help text. Heights are from level ground at the loaded ride height and the pressure entered.
 */
export const bodyFields = {
  widthM: number(
    'Width over mirrors',
    'length',
    1.2,
    2.8,
    'Tape from mirror tip to mirror tip, folded if you drive with them folded.',
  ),
  heightM: number('Height', 'length', 1.2, 4, 'Tape from the ground to the highest thing on the roof.'),
  frontOverhangM: number('Front overhang', 'length', 0.3, 1.8, 'Front wheel centre to the foremost point.'),
  rearOverhangM: number('Rear overhang', 'length', 0.3, 2.5, 'Rear wheel centre to the rearmost point.'),
  approachRad: number(
    'Approach angle',
    'angle',
    0.1,
    1.2,
    'Steepest ramp the front meets without touching; the handbook prints it.',
  ),
  rampoverRad: number(
    'Rampover angle',
    'angle',
    0.1,
    1,
    'Sharpest crest the belly clears; the handbook prints it.',
  ),
  departureRad: number(
    'Departure angle',
    'angle',
    0.1,
    1.2,
    'Steepest ramp the tail leaves without touching; a tow hitch lowers it.',
  ),
  bellyHeightM: number(
    'Belly height',
    'size',
    0.08,
    0.8,
    'Lowest fixed thing between the axles, not on an axle.',
  ),
  sillHeightM: number('Sill height', 'size', 0.1, 1, 'Underside of the sill or side step.'),
} satisfies FieldTable;

export const axleFields = {
  wheelbaseM: number('Wheelbase', 'length', 1.8, 4.5, 'Front wheel centre to rear wheel centre.'),
  frontTrackWidthM: number(
    'Front track width',
    'length',
    1,
    2.1,
    'Middle of the left tread to middle of the right tread, front.',
  ),
  rearTrackWidthM: number(
    'Rear track width',
    'length',
    1,
    2.1,
    'Middle of the left tread to middle of the right tread, rear.',
  ),
  frontAxle: choice(
    'Front axle',
    AXLE_KINDS,
    'Beam: one housing joins both wheels. Independent: each wheel moves alone.',
  ),
  rearAxle: choice(
    'Rear axle',
    AXLE_KINDS,
    'Beam: one housing joins both wheels. Independent: each wheel moves alone.',
  ),
  frontDifferentialHeightM: number(
    'Front differential height',
    'size',
    0.1,
    0.6,
    'Lowest point of the housing or the guard under it.',
  ),
  frontDifferentialYM: number(
    'Front differential, left of middle',
    'size',
    -0.7,
    0.7,
    'How far the housing sits from the middle of the axle; left is positive.',
  ),
  rearDifferentialHeightM: number(
    'Rear differential height',
    'size',
    0.1,
    0.6,
    'Lowest point of the housing or the guard under it.',
  ),
  rearDifferentialYM: number(
    'Rear differential, left of middle',
    'size',
    -0.7,
    0.7,
    'How far the housing sits from the middle of the axle; left is positive.',
  ),
  frontBumpM: number('Front wheel travel up', 'size', 0.02, 0.4, 'From loaded ride height to the bump stop.'),
  frontDroopM: number('Front wheel travel down', 'size', 0.02, 0.5, 'From loaded ride height to full hang.'),
  rearBumpM: number('Rear wheel travel up', 'size', 0.02, 0.4, 'From loaded ride height to the bump stop.'),
  rearDroopM: number('Rear wheel travel down', 'size', 0.02, 0.5, 'From loaded ride height to full hang.'),
  frontRideHz: number(
    'Front ride frequency',
    'frequency',
    0.7,
    3,
    'Bounces a second when pushed down and let go; soft 1.1, usual 1.4, stiff 1.8.',
  ),
  rearRideHz: number(
    'Rear ride frequency',
    'frequency',
    0.7,
    3,
    'Bounces a second when pushed down and let go; soft 1.2, usual 1.5, stiff 2.',
  ),
  frontAntiRollNmPerRad: number(
    'Front anti-roll bar',
    'rollStiffness',
    0,
    120e3,
    'Roll stiffness that the bar adds to the springs; 0 without a bar.',
  ),
  rearAntiRollNmPerRad: number(
    'Rear anti-roll bar',
    'rollStiffness',
    0,
    120e3,
    'Roll stiffness that the bar adds to the springs; 0 without a bar.',
  ),
  antiRollDisconnects: flag(
    'Anti-roll bars disconnect',
    'The driver can take the bars out of action before an obstacle.',
  ),
  turningCircleM: number('Turning circle', 'length', 7, 20, 'Kerb to kerb; the handbook prints it.'),
} satisfies FieldTable;

export const massFields = {
  massKg: number(
    'Mass as loaded',
    'mass',
    600,
    6000,
    'Weighbridge, with people, fuel, water and gear, without the roof load.',
  ),
  frontShare: number(
    'Front share',
    'share',
    0.3,
    0.7,
    'Weighbridge: front axle over both, without the roof load.',
  ),
  massHeightM: number(
    'Centre of mass height',
    'size',
    0.4,
    1.4,
    'From level ground, without the roof load; wagons are near 0.7 m (28 in).',
  ),
  roofLoadKg: number('Roof load', 'mass', 0, 400, 'Everything above the roof, rack and tent included.'),
  roofLoadHeightM: number(
    'Roof load height',
    'length',
    1.2,
    3.5,
    'Middle of the roof load above the ground.',
  ),
} satisfies FieldTable;

export const tyreFields = {
  tyreDiameterM: number(
    'Tyre diameter',
    'size',
    0.5,
    1.2,
    'Straight edge over the tyre to the ground, unloaded.',
  ),
  tyreSectionM: number('Tyre section width', 'size', 0.14, 0.5, 'The first number on the sidewall.'),
  tyrePattern: choice('Tyre pattern', ['road', 'all-terrain', 'mud-terrain'], 'What the tread is made for.'),
  tyrePressurePa: number(
    'Tyre pressure',
    'pressure',
    60e3,
    500e3,
    'As driven on the track before airing down.',
  ),
  lowPressurePa: number(
    'Lowest tyre pressure',
    'pressure',
    50e3,
    500e3,
    'As low as this tyre and rim may go off the road.',
  ),
  tyreStiffnessNPerM: number(
    'Tyre stiffness',
    'stiffness',
    80e3,
    600e3,
    'Load over deflection of one tyre at the pressure entered.',
  ),
} satisfies FieldTable;

export const drivelineFields = {
  drive: choice(
    'Drive',
    ['part-time four', 'full-time four', 'on-demand four', 'front', 'rear'],
    'Which axles the engine can reach.',
  ),
  centre: choice(
    'Centre differential',
    ['none', 'open', 'limited slip', 'lockable'],
    'None: part-time, both axles turn as one when engaged.',
  ),
  lowRangeRatio: number(
    'Low range',
    'number',
    1,
    5,
    'Reduction of the transfer case; 1 where there is none.',
  ),
  crawlRatio: number('Crawl ratio', 'number', 8, 150, 'First gear × final drive × low range.'),
  engineTorqueNm: number('Engine torque', 'torque', 60, 1200, 'Greatest torque.'),
  frontDifferential: choice(
    'Front differential',
    DIFFERENTIALS,
    'What lets the two front wheels turn at different speeds.',
  ),
  frontBias: number(
    'Front bias ratio',
    'number',
    1,
    5,
    'Limited slip: torque of the better wheel over the worse.',
  ),
  rearDifferential: choice(
    'Rear differential',
    DIFFERENTIALS,
    'What lets the two rear wheels turn at different speeds.',
  ),
  rearBias: number(
    'Rear bias ratio',
    'number',
    1,
    5,
    'Limited slip: torque of the better wheel over the worse.',
  ),
  brakeTraction: choice(
    'Brake traction control',
    BRAKE_TRACTION,
    'Brakes a spinning wheel. Late: jerks in after much spin. Early: works almost at once.',
  ),
  engineTraction: choice(
    'Engine traction control',
    ['none', 'always on', 'off in low range', 'off with centre locked'],
    'Cuts the engine when wheels spin; when it stands down.',
  ),
  stabilityControl: choice(
    'Stability control',
    ['none', 'always on', 'off in low range', 'off with centre locked'],
    'Brakes single wheels to keep the heading; when it stands down.',
  ),
  hillDescent: flag('Hill descent control', 'Holds a walking pace downhill with the brakes.'),
} satisfies FieldTable;

export const waterFields = {
  wadingDepthM: number('Wading depth', 'size', 0.1, 1.2, 'The maker prints it, for still water.'),
  floorHeightM: number(
    'Floor height',
    'size',
    0.2,
    1,
    'Underside of the cabin floor; flowing water above it starts to carry the vehicle.',
  ),
} satisfies FieldTable;

export const recoveryFields = {
  frontPointN: number(
    'Front recovery point',
    'force',
    0,
    200e3,
    'Rated load; 0 where there is no rated point.',
  ),
  rearPointN: number(
    'Rear recovery point',
    'force',
    0,
    200e3,
    'Rated load; 0 where there is no rated point.',
  ),
  winchN: number('Winch', 'force', 0, 150e3, 'Rated pull on the first layer; 0 without a winch.'),
  ropeM: number('Winch rope', 'length', 0, 60, 'Usable length.'),
  straps: flag('Recovery strap', 'A kinetic strap or rope, and rated shackles.'),
  boards: flag('Traction boards', 'A pair of boards.'),
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
