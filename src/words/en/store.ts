/** What can go wrong between Rutline and the device's store. */
export const store = {
  'not available': {
    what: 'This browser keeps nothing for Rutline (a private window, or storage switched off).',
    done: 'Save the trip as a file before you close this window.',
  },
  full: {
    what: 'The device has no room left.',
    done: 'Nothing stored was changed. Save the trip as a file, make room, then store it again.',
  },
  blocked: {
    what: 'Rutline is open in another window that is older than this one.',
    done: 'Close the other windows of Rutline, then load this one again.',
  },
  closed: {
    what: 'The store was closed: a newer Rutline was opened in another window, or the browser shut it.',
    done: 'Save the trip as a file, then load this window again.',
  },
  silent: {
    what: 'The device’s store does not answer.',
    done: 'Save the trip as a file if you entered anything just now, then load this page again. What was stored before is still there.',
  },
  missing: {
    what: 'There is no such trip on this device.',
    done: 'It may have been removed in another window.',
  },
  corrupt: {
    what: 'The stored trip is damaged and cannot be read.',
    done: 'It is kept as it is. Save its raw record as a file, and open your last trip file.',
  },
  'newer version': {
    what: 'A newer Rutline stored this.',
    done: 'Nothing was changed. Load this window again to update Rutline, then open it.',
  },
  'changed elsewhere': {
    what: 'The trip was changed in another window since it was opened here.',
    done: 'Nothing stored was changed. Keep both, this one as a trip of its own; or go on with the stored one, and this one is dropped.',
  },
  failed: {
    what: 'The device could not do it.',
    done: 'Nothing stored was changed. Save the trip as a file, then try again.',
  },
};
