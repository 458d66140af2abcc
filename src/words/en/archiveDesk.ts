/** The Archive desk: the trips on this device. */
export const archiveDesk = {
  head: 'Trips on this device',
  tripsHere: 'trips on this device',
  newTrip: 'New trip',
  openFile: 'Open a file',
  openDemo: 'Open the demonstration',
  looking: 'Looking …',
  unread: 'What is stored on this device cannot be read now.',
  nothing: 'Nothing here yet',
  nothingHelp: 'Start a new trip, or open a GPX or trip file. What you enter is stored here by itself.',
  unnamedTrip: 'Unnamed trip',
  noTrack: 'no track',
  summary: (length: string, obstacles: number, date: string) =>
    `${length}, ${obstacles === 1 ? '1 obstacle' : `${obstacles} obstacles`}, stored ${date}`,
  onDesk: '· on the desk',
  open: 'Open',
  saveAsFile: 'Save as file',
  remove: 'Remove',
  renameHelp: 'Open a trip and write over its name at the top to rename it.',
};
