/** What each value of a vehicle is called, and how it is measured. */
export const vehicleFields = {
  widthM: {
    label: 'Width over mirrors',
    sentence: 'Tape from mirror tip to mirror tip, folded if you drive with them folded.',
  },
  heightM: { label: 'Height', sentence: 'Tape from the ground to the highest thing on the roof.' },
  frontOverhangM: { label: 'Front overhang', sentence: 'Front wheel centre to the foremost point.' },
  rearOverhangM: { label: 'Rear overhang', sentence: 'Rear wheel centre to the rearmost point.' },
  approachRad: {
    label: 'Approach angle',
    sentence: 'Steepest ramp the front meets without touching; the handbook prints it.',
  },
  rampoverRad: {
    label: 'Rampover angle',
    sentence: 'Sharpest crest the belly clears; the handbook prints it.',
  },
  departureRad: {
    label: 'Departure angle',
    sentence: 'Steepest ramp the tail leaves without touching; a tow hitch lowers it.',
  },
  bellyHeightM: { label: 'Belly height', sentence: 'Lowest fixed thing between the axles, not on an axle.' },
  sillHeightM: { label: 'Sill height', sentence: 'Underside of the sill or side step.' },
  wheelbaseM: { label: 'Wheelbase', sentence: 'Front wheel centre to rear wheel centre.' },
  frontTrackWidthM: {
    label: 'Front track width',
    sentence: 'Middle of the left tread to middle of the right tread, front.',
  },
  rearTrackWidthM: {
    label: 'Rear track width',
    sentence: 'Middle of the left tread to middle of the right tread, rear.',
  },
  frontAxle: {
    label: 'Front axle',
    sentence: 'Beam: one housing joins both wheels. Independent: each wheel moves alone.',
  },
  rearAxle: {
    label: 'Rear axle',
    sentence: 'Beam: one housing joins both wheels. Independent: each wheel moves alone.',
  },
  frontDifferentialHeightM: {
    label: 'Front differential height',
    sentence: 'Lowest point of the housing or the guard under it.',
  },
  frontDifferentialYM: {
    label: 'Front differential, left of middle',
    sentence: 'How far the housing sits from the middle of the axle; left is positive.',
  },
  rearDifferentialHeightM: {
    label: 'Rear differential height',
    sentence: 'Lowest point of the housing or the guard under it.',
  },
  rearDifferentialYM: {
    label: 'Rear differential, left of middle',
    sentence: 'How far the housing sits from the middle of the axle; left is positive.',
  },
  frontBumpM: { label: 'Front wheel travel up', sentence: 'From loaded ride height to the bump stop.' },
  frontDroopM: { label: 'Front wheel travel down', sentence: 'From loaded ride height to full hang.' },
  rearBumpM: { label: 'Rear wheel travel up', sentence: 'From loaded ride height to the bump stop.' },
  rearDroopM: { label: 'Rear wheel travel down', sentence: 'From loaded ride height to full hang.' },
  frontRideHz: {
    label: 'Front ride frequency',
    sentence: 'Bounces a second when pushed down and let go; soft 1.1, usual 1.4, stiff 1.8.',
  },
  rearRideHz: {
    label: 'Rear ride frequency',
    sentence: 'Bounces a second when pushed down and let go; soft 1.2, usual 1.5, stiff 2.',
  },
  frontAntiRollNmPerRad: {
    label: 'Front anti-roll bar',
    sentence: 'Roll stiffness that the bar adds to the springs; 0 without a bar.',
  },
  rearAntiRollNmPerRad: {
    label: 'Rear anti-roll bar',
    sentence: 'Roll stiffness that the bar adds to the springs; 0 without a bar.',
  },
  antiRollDisconnects: {
    label: 'Anti-roll bars disconnect',
    sentence: 'The driver can take the bars out of action before an obstacle.',
  },
  turningCircleM: { label: 'Turning circle', sentence: 'Kerb to kerb; the handbook prints it.' },
  massKg: {
    label: 'Mass as loaded',
    sentence: 'Weighbridge, with people, fuel, water and gear, without the roof load.',
  },
  frontShare: { label: 'Front share', sentence: 'Weighbridge: front axle over both, without the roof load.' },
  massHeightM: {
    label: 'Centre of mass height',
    sentence: 'From level ground, without the roof load; wagons are near 0.7 m (28 in).',
  },
  roofLoadKg: { label: 'Roof load', sentence: 'Everything above the roof, rack and tent included.' },
  roofLoadHeightM: { label: 'Roof load height', sentence: 'Middle of the roof load above the ground.' },
  tyreDiameterM: { label: 'Tyre diameter', sentence: 'Straight edge over the tyre to the ground, unloaded.' },
  tyreSectionM: { label: 'Tyre section width', sentence: 'The first number on the sidewall.' },
  tyrePattern: { label: 'Tyre pattern', sentence: 'What the tread is made for.' },
  tyrePressurePa: { label: 'Tyre pressure', sentence: 'As driven on the track before airing down.' },
  lowPressurePa: {
    label: 'Lowest tyre pressure',
    sentence: 'As low as this tyre and rim may go off the road.',
  },
  tyreStiffnessNPerM: {
    label: 'Tyre stiffness',
    sentence: 'Load over deflection of one tyre at the pressure entered.',
  },
  drive: { label: 'Drive', sentence: 'Which axles the engine can reach.' },
  centre: { label: 'Centre differential', sentence: 'None: part-time, both axles turn as one when engaged.' },
  lowRangeRatio: { label: 'Low range', sentence: 'Reduction of the transfer case; 1 where there is none.' },
  crawlRatio: { label: 'Crawl ratio', sentence: 'First gear × final drive × low range.' },
  engineTorqueNm: { label: 'Engine torque', sentence: 'Greatest torque.' },
  frontDifferential: {
    label: 'Front differential',
    sentence: 'What lets the two front wheels turn at different speeds.',
  },
  frontBias: {
    label: 'Front bias ratio',
    sentence: 'Limited slip: torque of the better wheel over the worse.',
  },
  rearDifferential: {
    label: 'Rear differential',
    sentence: 'What lets the two rear wheels turn at different speeds.',
  },
  rearBias: {
    label: 'Rear bias ratio',
    sentence: 'Limited slip: torque of the better wheel over the worse.',
  },
  brakeTraction: {
    label: 'Brake traction control',
    sentence: 'Brakes a spinning wheel. Late: jerks in after much spin. Early: works almost at once.',
  },
  engineTraction: {
    label: 'Engine traction control',
    sentence: 'Cuts the engine when wheels spin; when it stands down.',
  },
  stabilityControl: {
    label: 'Stability control',
    sentence: 'Brakes single wheels to keep the heading; when it stands down.',
  },
  hillDescent: { label: 'Hill descent control', sentence: 'Holds a walking pace downhill with the brakes.' },
  wadingDepthM: { label: 'Wading depth', sentence: 'The maker prints it, for still water.' },
  floorHeightM: {
    label: 'Floor height',
    sentence: 'Underside of the cabin floor; flowing water above it starts to carry the vehicle.',
  },
  frontPointN: { label: 'Front recovery point', sentence: 'Rated load; 0 where there is no rated point.' },
  rearPointN: { label: 'Rear recovery point', sentence: 'Rated load; 0 where there is no rated point.' },
  winchN: { label: 'Winch', sentence: 'Rated pull on the first layer; 0 without a winch.' },
  ropeM: { label: 'Winch rope', sentence: 'Usable length.' },
  straps: { label: 'Recovery strap', sentence: 'A kinetic strap or rope, and rated shackles.' },
  boards: { label: 'Traction boards', sentence: 'A pair of boards.' },
};
