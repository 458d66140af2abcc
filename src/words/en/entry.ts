/** Boxes to type into: their numbers, ranges and faults, and how a value was got. */
export const entry = {
  holds: 'Holds',
  estimate: 'estimate',
  yes: 'yes',
  no: 'no',
  howGot: (title: string) => `How ${title.toLowerCase()} was got`,
  turnSign: (label: string) => `Turn the sign of ${label}`,
  range: (from: string, to: string) => `${from} to ${to}`,
  empty: (label: string, range: string) => `${label} is empty. Enter ${range}.`,
  noNumber: (text: string, example: string) => `“${text}” is not a number. Write it as ${example}.`,
  otherUnit: (fault: string) => `${fault} Was another unit meant?`,
  atPin: 'at the pin',
  beforePin: (distance: string) => `${distance} before the pin`,
  pastPin: (distance: string) => `${distance} past the pin`,
  change: (label: string) => `change ${label.toLowerCase()}`,
  changeHow: (label: string) => `change how ${label.toLowerCase()} was got`,
  confirm: (label: string) => `confirm ${label.toLowerCase()}`,
};
