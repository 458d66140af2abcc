import type { Words } from '../words.ts';

/** Platz auf dem Gerät, ob der Browser ihn erhält, und Sicherungen. */
export const storage: Words['storage'] = {
  head: 'Speicher',
  used: (used, room) => `${used} von ${room}, die der Browser gibt, sind belegt.`,
  usedUnknown: 'Dieser Browser sagt nicht, wie viel belegt ist.',
  persisted: 'Der Browser hat zugesagt, dies nie von selbst zu löschen.',
  notPersisted: 'Der Browser darf dies löschen, wenn auf dem Gerät der Platz ausgeht: Sicherungen anlegen.',
  ask: 'Den Browser bitten, es zu behalten',
  refused:
    'Der Browser hat nicht zugestimmt. Manche tun es, sobald eine Seite installiert ist oder oft benutzt wird.',
  backups: 'Sicherungen',
  help: 'Rutline schreibt die offene Fahrt und das Archiv nach Änderungen als Dateien in einen Ordner eigener Wahl, höchstens alle fünf Minuten. Von beiden bleiben die letzten zehn, und die letzte von jedem von dreißig Tagen.',
  choose: 'Ordner wählen',
  chooseOther: 'Anderen Ordner wählen',
  into: (folder) => `Sicherungen gehen in den Ordner „${folder}“.`,
  last: (moment) => `Die letzte wurde ${moment} geschrieben.`,
  noneYet: 'Noch wurde keine geschrieben.',
  now: 'Jetzt sichern',
  stop: 'Sicherungen beenden',
  asks: (folder) => `Sicherungen in „${folder}“ warten: Der Browser möchte noch einmal gefragt werden.`,
  goOn: 'Weiter sichern',
  notThere: 'es ist nicht mehr da',
  upToDate: 'Sie enthält die Fahrt, wie sie jetzt ist.',
  nothing: 'Auf dem Tisch liegt nichts zu sichern: die Beispielfahrt oder eine leere Fahrt.',
  denied: 'Der Browser durfte dort nicht schreiben. Es wurde nichts geschrieben.',
  failed: (folder, fault) =>
    `Die letzte Sicherung in „${folder}“ ist misslungen (${fault}). Dort wurde nichts geändert. Einen anderen Ordner wählen oder die Fahrt als Datei speichern.`,
  notAble: 'Dieser Browser kann nicht von selbst in einen Ordner sichern. Ab und zu eine Datei speichern.',
  saveNow: 'Jetzt eine Sicherung speichern',
  savedLast: (moment) => `Die letzte wurde ${moment} gespeichert.`,
  due: (trip) => `${trip} wurde seit einer Woche nicht als Datei gespeichert.`,
  gone: 'Die Fahrten, die hier gespeichert waren, sind weg: Der Browser oder jemand hat sie gelöscht. Eine Sicherung oder eine Fahrtdatei öffnen.',
  takenFromFile: (trip) =>
    `${trip} auf diesem Gerät sagt etwas anderes: Die Datei wurde als eigene Fahrt geöffnet.`,
  archive: 'Archiv',
  merged: (tracks) =>
    `${tracks === 1 ? '1 Strecke' : `${tracks} Strecken`} mit dem Archiv zusammengeführt: Nichts, was hier war, geht verloren.`,
  notReadable: (name, fault) => `„${name}“ konnte nicht gelesen werden (${fault}).`,
  bringBack: 'Eine zurückholen',
  which: 'Welche Sicherung',
  take: 'Diese Sicherung öffnen',
  takeHelp:
    'Eine Fahrt, die etwas anderes sagt als die gespeicherte, wird daneben geöffnet; das Archiv nimmt auf, was ihm fehlt. Nichts Gespeichertes wird überschrieben.',
  noneThere: 'In diesem Ordner ist keine Sicherung.',
  fromFile: (trip) => `${trip} (aus Datei)`,
};
