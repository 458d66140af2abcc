import type { Words } from '../words.ts';

const STOPPED = 'Hier wurde nicht weiter gelesen; alles davor bleibt erhalten.';
const SPLIT = `${STOPPED} Die Datei teilen.`;
const UTF8 = 'Als UTF-8 gelesen.';
const LEFT_OUT = 'Der Punkt wurde weggelassen.';
const UNKNOWN = 'Gilt als nicht bekannt.';
const PASSED_OVER = 'Es wurde übergangen.';

export const gpx: Words['gpx'] = {
  empty: { what: 'Die Datei ist leer.', done: 'Noch einmal exportieren.' },
  notXml: {
    what: 'Das ist kein GPX: Es wurde kein XML-Element darin gefunden.',
    done: 'Die .gpx-Datei selbst wählen.',
  },
  archive: { what: 'Das ist ein {}, kein GPX.', done: 'Erst entpacken, dann die .gpx-Datei darin öffnen.' },
  notGpx: { what: 'Das ist kein GPX: Es beginnt mit <{}>.', done: 'Die Aufzeichnung als GPX exportieren.' },
  webPage: {
    what: 'Das ist eine Webseite, kein GPX.',
    done: 'Die Datei selbst herunterladen; vielleicht ist eine Anmeldung nötig.',
  },
  doctype: {
    what: 'Die Datei erklärt einen Dokumenttyp (DOCTYPE), den GPX nie braucht und der schädliche Entitäten enthalten kann.',
    done: 'Nichts wurde gelesen. Die Datei noch einmal exportieren, ohne diese Erklärung.',
  },
  noPoints: {
    what: 'Die Datei enthält keinen brauchbaren Punkt.',
    done: 'Nichts zu zeigen. Nachsehen, ob es der richtige Export ist.',
  },
  noTrack: {
    what: 'Die Datei enthält Wegpunkte, aber keine Strecke und keine Route.',
    done: 'Die Wegpunkte wurden gelesen.',
  },
  version: { what: 'Die GPX-Version ist „{}“; bekannt sind 1.0 und 1.1.', done: 'Als GPX 1.1 gelesen.' },
  versionMissing: { what: 'Die GPX-Version ist nicht angegeben.', done: 'Als GPX 1.1 gelesen.' },
  creatorMissing: {
    what: 'Das Programm, das die Datei geschrieben hat (creator), ist nicht angegeben.',
    done: 'Ohne die Angabe gelesen.',
  },
  badGzip: { what: 'Die gzip-Packung der Datei ist beschädigt ({}).', done: STOPPED },
  encodingUnknown: { what: 'Die Zeichenkodierung „{}“ ist nicht bekannt.', done: UTF8 },
  encodingWrong: { what: 'Die Datei nennt als Kodierung {}, aber ihre Bytes sind es nicht.', done: UTF8 },
  badCharacters: {
    what: 'Einige Buchstaben eines Textes passen nicht zur Kodierung.',
    done: 'Sie werden als \uFFFD gezeigt.',
  },
  nul: {
    what: 'In der Datei stehen NUL-Zeichen, wie nach einem Stromausfall.',
    done: 'Sie wurden weggelassen.',
  },
  bareAmpersand: { what: 'In einem Text steht ein bloßes „&“; XML will „&amp;“.', done: 'Als „&“ gelesen.' },
  unknownEntity: {
    what: 'In einem Text steht eine Entität, die XML nicht kennt.',
    done: 'Wie geschrieben belassen.',
  },
  textBeforeRoot: { what: 'Vor dem ersten Element steht etwas.', done: PASSED_OVER },
  textAfterRoot: { what: 'Nach dem Ende der Aufzeichnung steht etwas.', done: PASSED_OVER },
  lateDeclaration: {
    what: 'Die XML-Deklaration steht nicht am Anfang oder ist unvollständig.',
    done: 'Sie wurde übergangen.',
  },
  secondRoot: {
    what: 'Nach dem Ende der ersten folgt eine zweite Aufzeichnung.',
    done: 'Sie wurde auch gelesen.',
  },
  crossedTags: {
    what: 'Ein schließendes Tag gehört nicht zum zuletzt geöffneten Element.',
    done: 'Die offenen Elemente enden hier. Die Punkte um diese Zeile prüfen.',
  },
  strayClosingTag: { what: 'Ein schließendes Tag gehört zu keinem offenen Element.', done: STOPPED },
  malformed: {
    what: 'Kein wohlgeformtes XML: {}.',
    done: 'Übergangen. Die Punkte um diese Zeile prüfen.',
  },
  truncated: {
    what: 'Die Datei endet vor der Aufzeichnung.',
    done: 'Alles bis zum letzten ganzen Punkt bleibt erhalten.',
  },
  gzipBomb: {
    what: 'Entpackt wächst die Datei auf mehr als das {}-Fache; das tut keine Aufzeichnung.',
    done: STOPPED,
  },
  tooBig: { what: 'Die Datei ist größer als {} MB.', done: SPLIT },
  tooManyPoints: { what: 'Die Datei enthält mehr als {} Punkte.', done: SPLIT },
  tooManyTracks: { what: 'Die Datei enthält mehr als {} Strecken und Routen.', done: SPLIT },
  tooDeep: { what: 'Elemente stehen mehr als {}-fach ineinander.', done: STOPPED },
  tooLong: {
    what: 'Ein einzelner Wert, ein Tag oder ein Kommentar ist länger als {} Zeichen.',
    done: STOPPED,
  },
  tooBroken: { what: 'Die Datei verletzt die Regeln von XML an mehr als {} Stellen.', done: STOPPED },
  textCut: {
    what: 'Ein Name oder eine Beschreibung ist länger als {} Zeichen.',
    done: 'Der Rest wurde abgeschnitten.',
  },
  positionMissing: {
    what: 'Einem Punkt fehlt die Breite oder die Länge, oder sie ist keine Zahl.',
    done: LEFT_OUT,
  },
  positionOutOfRange: {
    what: 'Ein Punkt hat eine Breite über 90 oder eine Länge über 180 Grad.',
    done: LEFT_OUT,
  },
  longitude180: {
    what: 'Eine Länge ist mit +180 Grad angegeben.',
    done: 'Als -180 gelesen, derselbe Meridian.',
  },
  elevationMissing: {
    what: 'Ein Punkt hat keine Höhe.',
    done: 'Wo zu wenige Punkte eine haben, ist die Neigung nicht bekannt.',
  },
  elevationBad: { what: 'Eine Höhe ist keine Zahl.', done: UNKNOWN },
  elevationOutOfRange: { what: 'Eine Höhe liegt unter {} m oder über dem höchsten Berg.', done: UNKNOWN },
  elevationTwice: { what: 'Ein Punkt hat zwei Höhen.', done: 'Die erste wurde genommen.' },
  timeBad: { what: 'Eine Zeit ist kein Datum mit Uhrzeit.', done: UNKNOWN },
  timeZoneMissing: { what: 'Eine Zeit hat keine Zone.', done: 'Als UTC genommen.' },
  timeBackwards: {
    what: 'Die Zeit läuft rückwärts.',
    done: 'Die Punkte bleiben in der Reihenfolge der Datei; Zeiten sagen dort wenig.',
  },
  duplicate: {
    what: 'Ein Punkt wiederholt den vor ihm in allem.',
    done: 'Die Wiederholung wurde weggelassen.',
  },
  emptyTrack: {
    what: 'Eine Strecke oder Route hat keinen brauchbaren Punkt.',
    done: 'Sie wurde weggelassen.',
  },
  singlePoint: {
    what: 'Eine Strecke oder Route hat nur einen Punkt.',
    done: 'Behalten, aber sie hat keine Länge und keine Neigung.',
  },
  zipArchive: 'ZIP-Archiv',
  bzip2Archive: 'bzip2-Archiv',
  cannotRead: (detail) => `Die Datei konnte nicht gelesen werden: ${detail}.`,
  chooseAgain:
    'Noch einmal wählen; sie wurde vielleicht verschoben oder ist größer, als dieses Gerät fassen kann.',
  cannotStart: (detail) => `Der GPX-Leser konnte nicht gestartet werden: ${detail}`,
};
