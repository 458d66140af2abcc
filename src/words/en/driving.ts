/** What a driver and the spotter do: on the way down, beside the vehicle, and when it stops where it should not. */
export const driving = {
  firstLow: 'first low',
  firstGear: 'first gear',
  holds: (gear: string) => `${gear} holds it on the way down`,
  justHolds: (gear: string) => `${gear} just holds it on the way down, a foot ready on the brake`,
  descentControl: (gear: string) => `hill descent control on, in ${gear}`,
  footOnBrake: (gear: string) => `${gear} and a foot on the brake`,
  engineHolds: (have: string, need: string) => `the engine holds ${have} of ${need}`,
  allOfIt: (said: string, rung: string) => `${said}, with ${rung} all of it`,
  down: (brakes: string, said: string) => `down with ${brakes}: ${said}`,
  onTheWayDown:
    'gear chosen before the edge, foot off the clutch, nose straight down the slope; an automatic is held in first and holds less.',
  stability: {
    none: '',
    'always on':
      'Stability control stays on: when it slides it may brake one wheel and close the throttle, so steer little.',
    'off in low range':
      'Stability control stands down in low range; in high range, when it slides it may brake one wheel and close the throttle, so steer little.',
    'off with centre locked':
      'Stability control stands down with the centre locked; before that, when it slides it may brake one wheel and close the throttle, so steer little.',
  },
  side: { left: 'left', right: 'right' },
  highSide: { left: 'left, the high side', right: 'right, the high side' },
  wellAhead: 'well ahead',
  aheadAbove: 'ahead and above',
  behindAbove: 'behind and above',
  pastEnd: (end: string) => `${end}, past the end`,
  noSafeSide: (end: string) => `no safe side: ${end}, past the end, off the line`,
  outOfWater: (place: string) => `${place}, out of the water`,
  stoppedOn: {
    uphill: 'uphill',
    downhill: 'downhill',
    'side slope': 'side slope',
    water: 'water',
    'level ground': 'level ground',
  },
  ifItStops: {
    uphill:
      'foot brake and clutch (automatic: foot brake), hand brake. On the spotter’s sign low reverse, straight back down your own tracks on the engine. No turning on the slope, no neutral, no rolling on the clutch.',
    downhill:
      'foot brake, hand brake, wait for the leader. If it slides: off the brake until the wheels turn, then gently on, straight down. No turning on the slope.',
    'side slope':
      'brakes on, sit still, no turning uphill. Out one at a time, on the high side only. It is tied to the high side before it moves again.',
    water:
      'do not crank a stopped engine, water may be in it. Belts off, windows down. Out when the leader says, or at once if the water rises.',
    'level ground':
      'off the throttle: spinning wheels dig. Low reverse, straight back in your own tracks, once. If that fails, call the leader.',
  },
};
