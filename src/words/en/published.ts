/** Published archives: read from any web host, and written to be put on one. */
export const published = {
  head: 'Published archives',
  intro:
    'Look into the tracks that a club has put on the web. Only the parts you look at are read, and nothing is asked for before you press the button.',
  seen: 'The host sees that your network reads, and which parts; nothing of yours goes to it.',
  address: 'Address of the archive',
  addressHelp: 'Such as https://club.example.org/tracks. It is remembered on this device.',
  badAddress:
    'This is no address of an archive: it begins with https://, or with http:// for one in your own network.',
  look: 'Look in',
  lookInto: (address: string) => `Look into ${address}`,
  reload: 'For a new address the page is loaded again.',
  known: 'Read before',
  forget: 'Forget',
  forgetArchive: (address: string) => `Forget ${address}`,
  opening: (address: string) => `Asking ${address} …`,
  again: 'Try again',
  other: 'Another archive',
  holds: (tracks: string, n: number) =>
    n === 1 ? '1 track in the archive' : `${tracks} tracks in the archive`,
  inView: (n: number) => (n === 1 ? '1 track in view' : `${n} tracks in view`),
  read: (size: string) => `${size} read`,
  reading: 'Reading …',
  list: 'Tracks in view',
  map: 'Map of the published archive',
  crowds: 'Tracks near to each other',
  crowdsHelp: 'The area is too wide to list each track. Choose where to look closer.',
  crowd: (name: string, more: number) =>
    more === 0 ? name : more === 1 ? `${name} and 1 more` : `${name} and ${more} more`,
  tooWide: 'The area is too wide',
  tooWideHelp: 'Look closer on the map, to less than some 50 km.',
  noneHere: 'No tracks here',
  noneHereHelp: 'Move the map, or look at all of the archive.',
  wholeArchive: 'All of the archive',
  empty: 'This archive has no tracks',
  emptyHelp: 'Whoever keeps it published it without any. Look into another, or come back later.',
  sheet: {
    unknown: 'This track was not among those that were read. Choose it on the map or in the list.',
    fetching: 'Reading the track …',
    takeOver: 'Take over into my archive',
    takeOverHelp: 'Then it is on this device, and is there without a network.',
    haveIt: 'You have this track already. What yours lacks is added; where both say something, yours stays.',
    tookOver: (name: string) => `${name} is in your archive.`,
    see: 'See it there',
    openTrip: 'Open as a trip',
    openTripHelp: 'With the convoy of the trip on the desk.',
    from: (address: string) =>
      `From ${address}. Published without names, notes, times of day, photos and outcomes: whoever measured is not told here.`,
  },
  trouble: {
    noNetwork: {
      what: 'There is no network.',
      done: 'What is on this device works without one. Look in again where there is one.',
    },
    unreachable: {
      what: 'Nothing answers at this address.',
      done: 'See whether the address is right and whether there is a network, then try again.',
    },
    noCors: {
      what: 'The host answers, but lets no page of another address read its files.',
      done: 'Tell whoever keeps the archive: its files must come with the header Access-Control-Allow-Origin (CORS).',
    },
    onlyHttps: {
      what: 'This page came by https and may not ask an address in plain http.',
      done: 'Ask whoever keeps the archive for its address with https.',
    },
    nothingThere: {
      what: 'The host has no archive at this address.',
      done: 'Type the address of the folder in which tracks.pmtiles lies, or of that file.',
    },
    refused: {
      what: 'The host refuses to give this out.',
      done: 'Ask whoever keeps the archive whether it is open to all.',
    },
    busy: { what: 'The host has too much to do, or is out of order.', done: 'Try again in a minute.' },
    moved: {
      what: 'The host sends on to another address.',
      done: 'Open the address in the browser, and type here the one that you end up at.',
    },
    wholeFiles: {
      what: 'The host gives out whole files only, and no parts of them.',
      done: 'Nothing was read. Tell whoever keeps the archive: it needs a host that answers range requests.',
    },
    noArchive: {
      what: 'There is something at this address, but no published archive.',
      done: 'See whether the address is right.',
    },
    newer: {
      what: 'A newer Rutline published this archive.',
      done: 'Load this page again to update Rutline, then look in again.',
    },
    brokenIndex: {
      what: 'The index of the archive is damaged.',
      done: 'Nothing of that part is used. Tell whoever keeps the archive to publish it again.',
    },
    brokenRecord: {
      what: 'The record of this track is damaged: it is not what the index says it is.',
      done: 'Nothing of it was taken. Tell whoever keeps the archive to publish it again.',
    },
    changed: {
      what: 'The archive was published anew since you looked in.',
      done: 'Look in again.',
    },
  },

  write: {
    head: 'Publish for readers',
    help: 'All tracks found, as two files for any web host. Anybody who has the address reads them, and loads only the part they look at.',
    prepare: 'See what goes out',
    count: (n: number) => (n === 1 ? '1 track goes out' : `${n} tracks go out`),
    carried: 'Carried',
    carriedList: [
      'the recorded line and its waypoints, without times',
      'obstacles with their place, all sizes and how each was measured, their lines',
      'grades by sizes, and the days of measuring',
      'names of tracks, areas, obstacles, lines and waypoints, as they are written: read them over for people',
    ],
    left: 'Not carried',
    leftList: [
      'who measured, noted or drove',
      'notes, and times of day',
      'photos',
      'what vehicles did',
      'history and open choices',
    ],
    names: 'These tracks',
    more: (n: number) => `and ${n} more`,
    folder: 'Write into a folder',
    zip: 'Save as a zip',
    cancel: 'Cancel',
    working: 'Packing the tracks',
    stop: 'Stop',
    stopped: 'Stopped. Nothing was written.',
    done: (tracks: string, n: number, folder: string) =>
      n === 1 ? `1 track is written into ${folder}.` : `${tracks} tracks are written into ${folder}.`,
    doneZip: (tracks: string, n: number) =>
      n === 1 ? '1 track is in the zip. Unpack it.' : `${tracks} tracks are in the zip. Unpack it.`,
    files: (index: string, indexSize: string, records: string, recordsSize: string) =>
      `${index}, ${indexSize}, and ${records}, ${recordsSize}.`,
    next: 'Put both side by side on a web host that answers range requests and lets other pages read (CORS): the second one first when you publish anew. Give readers the address of the folder.',
    nowhere: (names: string) => `Left out, since nothing of them has a place: ${names}.`,
    unread: (n: number) =>
      n === 1
        ? '1 track could not be read and is left out.'
        : `${n} tracks could not be read and are left out.`,
    nothing: 'None of these tracks has a place. Nothing was written.',
    failed: (why: string) => `It could not be written: ${why} Choose another folder, or save it as a zip.`,
    fileName: 'published-tracks.zip',
  },
};
