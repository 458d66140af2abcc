/** What can go wrong with the graded tracks that the club keeps, where it is said in other words than of a trip. */
export const library = {
  missing: {
    what: 'There is no such track in the archive of this device.',
    done: 'It may have been removed in another window. Look at the list again.',
  },
  corrupt: {
    what: 'The history of this track is damaged and cannot be read.',
    done: 'It is kept as it is. Save what is left as a file. Then take in a copy of the track (a file to share, a backup, or the club’s server), which takes its place.',
  },
  'changed elsewhere': {
    what: 'The track was changed since this was asked.',
    done: 'Nothing was changed now. Look at it again, then choose.',
  },
  full: {
    what: 'The device has no room left for this track.',
    done: 'The archive holds of it what it held before. Make room on the device, then do the same again.',
  },
  mended: {
    what: 'The history of this track here could not be read.',
    done: 'The copy that came took its place. What only the plain record here had was added; where both had something, the copy’s stands.',
  },
  ownKept: {
    what: 'The file says something else of this track than the archive.',
    done: 'What the archive did not have was added; of the rest its own was kept.',
  },
};
