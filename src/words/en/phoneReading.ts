/** Slope and camber read with the phone. */
export const phoneReading = {
  head: 'Read with this phone',
  close: 'Close',
  faults: {
    moving: 'The phone moved. Lay it down and wait until it says that it lies still.',
    'not turned': 'The phone was not turned end for end. Turn it by half a turn on the same spot.',
    'too far off':
      'The two readings differ by more than a phone is ever off. Take a firm, nearly level spot, and lay it twice on the same place.',
  },
  slope: 'Slope',
  camber: 'Camber',
  climbs: 'climbs',
  falls: 'falls',
  leftHigh: 'left side high',
  rightHigh: 'right side high',
  level: 'level',
  noSensor: 'This device does not tell how it lies.',
  noSensorWhy:
    'It has no such sensor, or the page was not opened over a secure address (https). Read an inclinometer and enter what it says.',
  refused: 'The browser was not allowed to read the sensor.',
  refusedWhy:
    'Allow motion and orientation for this page in its settings, load the page again, then come back here.',
  crosswise: 'This device cannot be laid along the line:',
  crosswiseWhy: 'its top is one of its long edges. Use a phone, or enter what an inclinometer says.',
  lay: (wind: string | null) =>
    `Lay a straight bar on the ground and the phone on its back upon it, its long edge along the line and its top edge pointing along the recorded direction${wind === null ? '' : ` (about ${wind} here)`}.`,
  layReversed: 'This trip is driven reversed: point the top edge back, against the way you drive.',
  layBoth:
    'For the slope the bar lies along the line, for the camber across it, the phone still pointing along; on a board that rests in both ways, take both.',
  winds: [
    'north',
    'north-east',
    'east',
    'south-east',
    'south',
    'south-west',
    'west',
    'north-west',
  ] as readonly string[],
  reading: 'Reading…',
  onItsBack: 'Lay the phone on its back, screen up.',
  holdStill: 'Hold still…',
  liesStill: 'Lies still.',
  spread: (plusMinus: string, zeroed: boolean, how: string, howPlusMinus: string) =>
    `± ${plusMinus} by spread and zero${zeroed ? '' : ', as this phone was never zeroed'}; it counts as ${how}, ± ${howPlusMinus}.`,
  takeThese: 'Take these',
  slopeOnly: 'Slope only',
  camberOnly: 'Camber only',
  zero: 'Zero',
  notZeroed: 'Not zeroed yet. A sensor, a case or a camera that stands out can be some degrees off.',
  zeroedOn: (date: string, off: string) =>
    `Zeroed on ${date}: on level ground this phone says ${off}, which is taken off. Zero it again with another case.`,
  toZero: 'To zero it, lay it on a firm, nearly level spot.',
  readThenTurn: 'Read, then turn round',
  forget: 'Forget the zero',
  nowTurn:
    'Now turn the phone end for end on the same spot, its top edge where its bottom edge was, and let it lie.',
  readTurned: 'Read turned round',
  leave: 'Leave it as it was',
};
