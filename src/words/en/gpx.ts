const STOPPED = 'Reading stopped here; everything before it is kept.';

/** Every complaint of the GPX reader. `{}` is replaced by a detail. */
export const gpx = {
  empty: { what: 'The file is empty.', done: 'Export it again.' },
  notXml: { what: 'This is not GPX: no XML element was found in it.', done: 'Choose the .gpx file itself.' },
  archive: { what: 'This is a {}, not GPX.', done: 'Unpack it first, then open the .gpx file inside.' },
  notGpx: { what: 'This is not GPX: it begins with <{}>.', done: 'Export the recording as GPX.' },
  webPage: {
    what: 'This is a web page, not GPX.',
    done: 'Download the file itself; a sign-in may be needed.',
  },
  doctype: {
    what: 'The file declares a document type (DOCTYPE), which GPX never needs and which can carry harmful entities.',
    done: 'Nothing was read. Export the file again, without the declaration.',
  },
  noPoints: {
    what: 'The file holds no usable point.',
    done: 'Nothing to show. Check that it is the right export.',
  },
  noTrack: { what: 'The file holds waypoints but no track and no route.', done: 'The waypoints were read.' },
  version: { what: 'The GPX version is "{}"; 1.0 and 1.1 are known.', done: 'Read as GPX 1.1.' },
  versionMissing: { what: 'The GPX version is not stated.', done: 'Read as GPX 1.1.' },
  creatorMissing: {
    what: 'The program that wrote the file (creator) is not stated.',
    done: 'Read without it.',
  },
  badGzip: { what: 'The gzip packing of the file is damaged ({}).', done: STOPPED },
  encodingUnknown: { what: 'The character encoding "{}" is not known.', done: 'Read as UTF-8.' },
  encodingWrong: { what: 'The file says its encoding is {}, but its bytes are not.', done: 'Read as UTF-8.' },
  badCharacters: {
    what: 'Some letters of a text do not fit the encoding.',
    done: 'They are shown as \uFFFD.',
  },
  nul: { what: 'NUL characters stand in the file, as after a loss of power.', done: 'They were left out.' },
  bareAmpersand: { what: 'A bare "&" stands in a text; XML wants "&amp;".', done: 'Read as "&".' },
  unknownEntity: { what: 'An entity that XML does not know stands in a text.', done: 'Left as written.' },
  textBeforeRoot: { what: 'Something stands before the first element.', done: 'It was passed over.' },
  textAfterRoot: { what: 'Something stands after the end of the recording.', done: 'It was passed over.' },
  lateDeclaration: {
    what: 'The XML declaration is not at the start, or is incomplete.',
    done: 'It was passed over.',
  },
  secondRoot: { what: 'A second recording follows the end of the first.', done: 'It was read as well.' },
  crossedTags: {
    what: 'A closing tag is not that of the element last opened.',
    done: 'The elements left open were taken to end here. Check the points near this line.',
  },
  strayClosingTag: { what: 'A closing tag belongs to no open element.', done: STOPPED },
  malformed: { what: 'Not well-formed XML: {}.', done: 'Passed over. Check the points near this line.' },
  truncated: {
    what: 'The file ends before the recording does.',
    done: 'Everything up to the last whole point is kept.',
  },
  gzipBomb: { what: 'Unpacked, the file grows more than {} times; no recording does.', done: STOPPED },
  tooBig: { what: 'The file is larger than {} MB.', done: `${STOPPED} Split the file.` },
  tooManyPoints: { what: 'The file holds more than {} points.', done: `${STOPPED} Split the file.` },
  tooManyTracks: {
    what: 'The file holds more than {} tracks and routes.',
    done: `${STOPPED} Split the file.`,
  },
  tooDeep: { what: 'Elements stand inside one another more than {} deep.', done: STOPPED },
  tooLong: { what: 'A single value, tag or comment is longer than {} characters.', done: STOPPED },
  tooBroken: { what: 'The file breaks the rules of XML in more than {} places.', done: STOPPED },
  textCut: { what: 'A name or description is longer than {} characters.', done: 'The rest was cut off.' },
  positionMissing: {
    what: 'A point has no latitude or no longitude, or not as a number.',
    done: 'The point was left out.',
  },
  positionOutOfRange: {
    what: 'A point has a latitude beyond 90 or a longitude beyond 180 degrees.',
    done: 'The point was left out.',
  },
  longitude180: { what: 'A longitude is given as +180 degrees.', done: 'Read as -180, the same meridian.' },
  elevationMissing: {
    what: 'A point has no elevation.',
    done: 'The slope is unknown where too few points have one.',
  },
  elevationBad: { what: 'An elevation is not a number.', done: 'Taken as unknown.' },
  elevationOutOfRange: {
    what: 'An elevation is below {} m or above the highest mountain.',
    done: 'Taken as unknown.',
  },
  elevationTwice: { what: 'A point has two elevations.', done: 'The first was taken.' },
  timeBad: { what: 'A time is not a date and time.', done: 'Taken as unknown.' },
  timeZoneMissing: { what: 'A time has no zone.', done: 'Taken as UTC.' },
  timeBackwards: {
    what: 'The time runs backwards.',
    done: 'The points stay in the order of the file; times there mean little.',
  },
  duplicate: { what: 'A point repeats the one before it in everything.', done: 'The repeat was left out.' },
  emptyTrack: { what: 'A track or route has no usable point.', done: 'It was left out.' },
  singlePoint: {
    what: 'A track or route has only one point.',
    done: 'Kept, but it has no length and no slope.',
  },
  zipArchive: 'zip archive',
  bzip2Archive: 'bzip2 archive',
  cannotRead: (detail: string) => `The file could not be read: ${detail}.`,
  chooseAgain: 'Choose it again; it may have been moved, or be larger than this device can hold.',
  cannotStart: (detail: string) => `The GPX reader could not be started: ${detail}`,
};
