/** Exchange of graded tracks with a server of the club. */
export const clubServer = {
  head: 'Exchange with the club’s server',
  help: 'All graded tracks with their history, names and photos, both ways. A track that was removed here comes back if the server has it.',
  address: 'Address of the server',
  addressHelp:
    'Such as https://tracks.example.org. Plain http only within this machine or its own network, where anyone who listens can read the key.',
  badAddress:
    'This is no address of a server: it begins with https://, or with http:// for one in your own network.',
  key: 'Your key',
  keyHelp: 'From whoever keeps the server. It stays on this device.',
  badKey: 'This is no key: it has letters, digits, hyphens and underscores only.',
  use: 'Use this server',
  useHelp: 'The page is loaded again.',
  change: 'Change',
  forget: 'Forget the server',
  exchange: 'Exchange now',
  exchanging: 'Exchanging …',
  stop: 'Stop',
  never: 'Not exchanged yet.',
  last: (when: string) => `Last exchanged ${when}.`,
  stopped: 'Stopped. What was exchanged so far is kept; go on whenever you like.',
  same: 'Nothing new on either side.',
  went: (names: string, n: number) =>
    n === 1 ? `Given to the server: ${names}.` : `Given to the server, ${n} tracks: ${names}.`,
  stayed: (names: string) => `Your key may only take. What you changed here stayed here: ${names}.`,
  more: (n: number) => `and ${n} more`,
  trouble: {
    offline: {
      what: 'The server does not answer.',
      done: 'Nothing here is lost. See whether there is a network and the address is right, and exchange again later.',
    },
    key: {
      what: 'The server does not know this key.',
      done: 'Type it again, or ask whoever keeps the server for a new one.',
    },
    readOnly: {
      what: 'This key may only take.',
      done: 'Ask whoever keeps the server for a key that may give.',
    },
    notOurs: {
      what: 'There is something at this address, but no server of a club’s tracks.',
      done: 'See whether the address is right.',
    },
    incomplete: {
      what: 'The server lacks a part of what was changed before.',
      done: 'Exchange again; if this stays, give the file of the track to whoever keeps the server.',
    },
    tooLarge: {
      what: 'The track is larger than the server takes.',
      done: 'It stays here. Take photos out, or give it as a file.',
    },
    damaged: {
      what: 'The server could not read what it was sent, and kept nothing of it.',
      done: 'Exchange again.',
    },
    busy: { what: 'The server has too much to do.', done: 'Exchange again in a minute.' },
    failed: {
      what: 'The server could not store it.',
      done: 'Nothing here is lost. Tell whoever keeps the server.',
    },
  },
};
