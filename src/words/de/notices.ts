import type { Words } from '../words.ts';

export const notices: Words['notices'] = {
  opening: 'Rutline sieht nach, was auf diesem Gerät gespeichert ist …',
  putBack: 'Zurücknehmen',
  close: 'Schließen',
  removed: (name) => `${name} entfernt.`,
  photosNotStored: (lost, trip) =>
    `${lost} der Fotos von ${trip} waren noch nicht gespeichert: bitte neu hinzufügen.`,
  trackNotStored: (trip) =>
    `Die Strecke von ${trip} war noch nicht gespeichert: die GPX-Datei noch einmal öffnen.`,
  changedElsewhere: (trip) =>
    `${trip} wurde auch in einem anderen Fenster geändert: Was hier übrig war, ist jetzt eine eigene Fahrt.`,
  storedUnread: (trip) =>
    `${trip} kann gespeichert nicht gelesen werden: Was hier davon übrig war, ist jetzt eine eigene Fahrt.`,
  copyOf: (name) => `${name} (Kopie)`,
  storedTrip: 'die gespeicherte Fahrt',
  notStored: 'Diese Fahrt ist nicht gespeichert.',
  saveAsFile: 'Als Datei speichern',
  keepBoth: 'Beide behalten',
  takeStored: 'Die gespeicherte nehmen',
  tryAgain: 'Noch einmal versuchen',
  verdictsFault: (error) => `Die Urteile konnten nicht berechnet werden (${error}). Die Seite neu laden.`,
  noRoomOffline:
    'Auf diesem Gerät ist kein Platz, um Rutline für den Betrieb ohne Netz zu behalten. Es arbeitet, solange es Netz gibt.',
  notKeptOffline:
    'Rutline konnte auf diesem Gerät nicht für den Betrieb ohne Netz behalten werden; beim nächsten Öffnen wird es wieder versucht. Es arbeitet, solange es Netz gibt.',
  noRoomForNewer:
    'Es gibt ein neueres Rutline, aber auf diesem Gerät keinen Platz dafür. Dieses hier arbeitet weiter wie bisher.',
  newer: 'Ein neueres Rutline ist da.',
  useNewer: 'Jetzt verwenden',
  deskNotLoaded:
    'Dieser Arbeitsplatz konnte nicht geladen werden. Lade die Seite neu, wo es Netz gibt; was du eingetragen hast, ist gespeichert.',
};
