/** The Brief desk, around its matrix. */
export const briefDesk = {
  unnamedTrip: 'Unnamed trip',
  track: 'Track',
  counts: (obstacles: number, vehicles: number) =>
    `${obstacles === 1 ? '1 obstacle' : `${obstacles} obstacles`}, ${vehicles === 1 ? '1 vehicle' : `${vehicles} vehicles`}`,
  direction: 'Direction',
  printMatrix: 'Print the matrix',
  printBriefing: 'Print briefing and cards',
  saveBriefing: 'Save them as a page',
  paperFault: (error: string) =>
    `The briefing could not be written (${error}). Try again, or load the page again.`,
  travelled: (direction: string) => `Travelled ${direction}`,
  nothing: 'Nothing to brief yet',
  pinOn: 'Pin the obstacles on the',
  scoutDesk: 'Scout desk',
  addIn: 'Add the vehicles in the',
  convoy: 'convoy',
  thenHere: "Then each vehicle's verdict on each obstacle stands here.",
  workedOut: (done: number, of: number) => `Worked out ${done} of ${of} …`,
  allWorkedOut: (of: number) => (of === 1 ? 'One verdict, worked out.' : `${of} verdicts, all worked out.`),
  stoppedAt: (done: number, of: number) =>
    `Stopped: ${done} of ${of} worked out. Nothing is written or printed from a part.`,
  stop: 'Stop',
  goOn: 'Go on',
  writing: 'Writing the briefing …',
  estimates: (names: string) =>
    `Values still estimated from the class: ${names}. A verdict on estimates is an estimate.`,
  before: 'Before anyone sets off',
};
