/** Kinds of obstacle to start from: what each is, and what is asked of it. */
export const presets = {
  sentence: {
    'rutted climb': 'Two ruts on a slope, each with its own depth.',
    'cross-axle holes': 'Holes on alternate sides about a wheelbase apart: they lift diagonal wheels.',
    ledge: 'A step up or down across the whole line.',
    ditch: 'A trench across the line.',
    'side slope': 'A stretch that leans.',
    ford: 'Water over the line; walk it only where that is safe.',
    rocks: 'Rocks that do not move, one under each wheel path.',
    log: 'A log across the line that stays where it is.',
    'soft ground': 'Mud, sand or bog that gives way under a wheel.',
  },
  leftDepth: 'Left rut depth',
  rightDepth: 'Right rut depth',
  rutWidth: 'Rut width',
  rutsApart: {
    label: 'Ruts apart, middle to middle',
    sentence: 'Tape from the middle of one rut to the middle of the other.',
  },
  holeDepth: 'Hole depth',
  holeLength: 'Hole length',
  holesApart: {
    label: 'Holes apart, middle to middle',
    sentence: 'Tape along the line from the middle of one hole to the middle of the next, on the other side.',
  },
  tallestRock: 'Tallest rock',
  secondRock: 'Second rock',
};
