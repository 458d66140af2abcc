/** What is said in passing, and of what stands in the way of keeping things. */
export const notices = {
  opening: 'Rutline is looking at what is stored on this device …',
  putBack: 'Put it back',
  close: 'Close',
  removed: (name: string) => `Removed ${name}.`,
  photosNotStored: (lost: number, trip: string) =>
    `${lost} of the photos of ${trip} were not stored yet: add them again.`,
  trackNotStored: (trip: string) => `The track of ${trip} was not stored yet: open its GPX file again.`,
  changedElsewhere: (trip: string) =>
    `${trip} was also changed in another window: what was left here is a trip of its own.`,
  storedUnread: (trip: string) =>
    `The stored ${trip} cannot be read: what was left here of it is a trip of its own.`,
  copyOf: (name: string) => `${name} (copy)`,
  storedTrip: 'the stored trip',
  notStored: 'This trip is not stored.',
  saveAsFile: 'Save it as a file',
  keepBoth: 'Keep both',
  takeStored: 'Take the stored one',
  tryAgain: 'Try again',
  verdictsFault: (error: string) => `The verdicts could not be worked out (${error}). Load the page again.`,
  noRoomOffline:
    'This device has no room to keep Rutline for use without network. It works as long as there is a network.',
  notKeptOffline:
    'Rutline could not be kept on this device for use without network; it is tried again when it is next opened. It works as long as there is a network.',
  noRoomForNewer:
    'There is a newer Rutline, and no room on this device to keep it. This one works on as it is.',
  newer: 'A newer Rutline is here.',
  useNewer: 'Use it now',
  deskNotLoaded:
    'This desk could not be loaded. Load the page again where there is a network; what you entered is stored.',
};
