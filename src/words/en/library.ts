/** What can go wrong with the graded tracks that the club keeps, where it is said in other words than of a trip. */
export const library = {
  missing: {
    what: 'There is no such track in the archive of this device.',
    done: 'It may have been removed in another window. Look at the list again.',
  },
  corrupt: {
    what: 'The history of this track is damaged and cannot be read.',
    done: 'It is kept as it is. Bring the track in again from a file or another device under another name.',
  },
  'changed elsewhere': {
    what: 'The track was changed since this was asked.',
    done: 'Nothing was changed now. Look at it again, then choose.',
  },
  ownKept: {
    what: 'The file says something else of this track than the archive.',
    done: 'What the archive did not have was added; of the rest its own was kept.',
  },
};
