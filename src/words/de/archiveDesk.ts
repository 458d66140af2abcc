import type { Words } from '../words.ts';

export const archiveDesk: Words['archiveDesk'] = {
  head: 'Fahrten auf diesem Gerät',
  tripsHere: 'Fahrten auf diesem Gerät',
  newTrip: 'Neue Fahrt',
  openFile: 'Datei öffnen',
  openDemo: 'Beispielfahrt öffnen',
  looking: 'Suche …',
  unread: 'Was auf diesem Gerät gespeichert ist, lässt sich gerade nicht lesen.',
  nothing: 'Noch nichts hier',
  nothingHelp:
    'Eine neue Fahrt anfangen oder eine GPX- oder Fahrtdatei öffnen. Was du eingibst, wird hier von selbst gespeichert.',
  unnamedTrip: 'Fahrt ohne Namen',
  noTrack: 'keine Strecke',
  summary: (length, obstacles, date) =>
    `${length}, ${obstacles === 1 ? '1 Hindernis' : `${obstacles} Hindernisse`}, gespeichert ${date}`,
  onDesk: '· auf dem Tisch',
  open: 'Öffnen',
  saveAsFile: 'Als Datei speichern',
  remove: 'Entfernen',
  renameHelp: 'Zum Umbenennen eine Fahrt öffnen und ihren Namen oben überschreiben.',
};
