/** The matrix, one cell of it looked at closely, and the order that is advised. */
export const matrix = {
  region: 'Verdicts',
  caption: 'Verdict of each vehicle on each obstacle, in order of travel and of convoy',
  obstacle: 'Obstacle',
  unnamed: 'Unnamed',
  place: (name: string) => `Place of ${name} in the convoy: drag, or arrow keys`,
  workingOut: 'working it out …',
  notWorkedOut: 'not worked out',
  why: 'Why',
  vehicleOn: (vehicle: string, obstacle: string) => `${vehicle} on ${obstacle}`,
  close: 'Close',
  openObstacle: 'Open the obstacle',
  openVehicle: 'Open the vehicle',
  openBench: 'Open the workbench',
  bestLine: 'best line',
  pull: (force: string) => `A pull of about ${force}`,
  pullHelp:
    'By a field method for recoveries, its reserve included. Look at points, gear and ground before anyone pulls.',
  onSlope: (words: string) => `On the slope: ${words}.`,
  drawn: (sure: string) =>
    `Drawn a hundred times from the ± of what was entered and the printed range of grip, it goes at a crawl in ${sure}.`,
  sideways: 'Moved sideways',
  nowhere: (error: string) =>
    `On the ground of the main line it goes nowhere with a driver's error of ${error} to either side.`,
  bandsAre: (error: string) =>
    `On the ground of the main line, left and right as you drive, a driver's error of ${error} taken off:`,
  exactly: (line: string) => `To be met exactly: ${line}.`,
  missed: (by: string) => `Missed by ${by}, it may not go. Have a spotter keep the wheels on it.`,
  checksWith: (rung: string) => `Checks with ${rung}`,
  check: 'Check',
  thereIs: 'There is',
  needed: 'Needed',
  margin: 'Margin',
  atWorst: 'At worst',
  engineBraking: 'engine braking',
  brakesHold: (cause: string) => `: ${cause}; brakes hold the rest`,
  orderHead: 'Who drives where in the line',
  lookingForOrder: 'Looking for the order …',
  stop: 'Stop',
  findOrder: 'Find the order in which most go unaided',
  orderHelp:
    'Each pass leaves soft and loose ground worse for the next; someone who can pull stays at either end.',
  wears:
    'Soft patches are judged as each vehicle finds them at its place in the convoy. Ruts are judged as they were measured: in ground that gives way they deepen for those behind, so look again after each pass.',
  orderFault: (error: string) =>
    `The order could not be worked out (${error}). Try again, or load the page again.`,
  standsSo: 'The convoy stands so.',
  takeOrder: 'Take this order',
  orderTaken: 'The convoy stands in the advised order.',
};
