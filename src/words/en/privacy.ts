/** What of people leaves with a file, and under whose licences the program stands. */
export const privacy = {
  head: 'To give to others',
  help: 'Without people, unless you say so: the track, the obstacles with their lines, and in a trip file the vehicles.',
  goesAlong: 'Goes along',
  carried: {
    drivers: 'drivers’ names',
    notes: 'notes',
    times: 'times of the recording',
    photos: 'photos',
  },
  photosHelp:
    'Photos hold neither the place nor the time they were taken. Drivers and photos go into a trip file only.',
  tripFile: 'Trip file',
  licences: 'Licences',
};
