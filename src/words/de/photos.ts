import type { Words } from '../words.ts';

export const photos: Words['photos'] = {
  head: (n) => `Fotos (${n})`,
  nameOf: (i, obstacle) => `Foto ${i} von ${obstacle}`,
  roomFor: (room) => `Ein Hindernis nimmt noch ${room} auf; die anderen blieben weg.`,
  take: 'Foto aufnehmen',
  takeLabel: 'Foto von der Kamera',
  add: 'Fotos hinzufügen',
  addLabel: 'Fotos aus Dateien',
  reading: (i, of) => `Lese Foto ${i} von ${of} …`,
  help: 'Verkleinert und mit der Fahrt behalten, ohne Ort und Zeit der Aufnahme.',
  dialog: 'Foto',
  whatItShows: 'Was es zeigt',
  before: 'Foto davor',
  next: 'Nächstes Foto',
  iOf: (i, of) => `${i} von ${of}`,
  remove: 'Entfernen',
  close: 'Schließen',
  removed: 'Ein Foto entfernt.',
  fault: {
    'no image': (file) =>
      `${file} ist kein Bild, das dieser Browser öffnen kann; als JPEG speichern und dieses hinzufügen.`,
    'too many pixels': (file) =>
      `${file} hat mehr Bildpunkte, als ein Gerät zeichnen kann; kleiner speichern und dieses hinzufügen.`,
    'too large': (file) => `${file} bleibt auch verkleinert zu groß.`,
    'not able': (file) => `${file} kann dieser Browser nicht verkleinern, er ist zu alt dafür.`,
  },
  notRead: (file, error) => `${file} konnte nicht gelesen werden (${error}).`,
  step: {
    add: (n) => (n === 1 ? 'Foto hinzufügen' : `${n} Fotos hinzufügen`),
    remove: 'Foto entfernen',
    caption: 'schreiben, was ein Foto zeigt',
    pinFrom: (preset) => `aus einem Foto setzen: ${preset}`,
  },
  pins: (n) => (n === 0 ? 'Hindernisse aus Fotos' : `Hindernisse aus Fotos (${n})`),
  pinsHelp:
    'Ein Foto kommt dorthin, wo die Kamera laut Datei stand, sonst nach seiner Zeit und den Zeiten der Strecke. Jedes ist nur ein Vorschlag; was dort liegt, sagst du.',
  choose: 'Fotos auswählen',
  chooseLabel: 'Fotos, aus denen gesetzt wird',
  clockAhead: 'Kamerauhr geht vor, in Minuten',
  clockHelp:
    'Einmal die Uhr des Empfängers fotografieren; was die Kamera mehr zeigt. Negativ, wenn sie nachgeht.',
  pinned: (preset, station) => `Gesetzt bei ${station}: ${preset}.`,
  addedTo: (n, obstacle) =>
    n === 1 ? `Foto hinzugefügt zu ${obstacle}.` : `${n} Fotos hinzugefügt zu ${obstacle}.`,
  gone: (obstacle) =>
    `${obstacle} wurde inzwischen entfernt, die neuen Fotos ließen sich nicht hinzufügen: Nimm das Entfernen zurück und füge sie noch einmal hinzu.`,
  noPlace: 'kein Ort.',
  alongPins: 'entlang der Pins, nach seiner Position',
  byPosition: (off) => `nach seiner Position, ${off} neben der Strecke`,
  byTime: (apart) => `nach seiner Zeit, zwischen Punkten mit ${apart} Abstand`,
  addTo: (obstacle) => `Hinzufügen zu ${obstacle}`,
  whatLiesAt: (photo) => `Was liegt bei ${photo}`,
  whatLies: 'Was liegt dort?',
  pinIt: 'Setzen',
  leaveOut: 'Weglassen',
  farOff: (off) => `Es wurde ${off} neben der Strecke aufgenommen.`,
  neither: 'Es sagt weder, wo, noch, wann es aufgenommen wurde.',
  onlyWhen: 'Es sagt nur, wann es aufgenommen wurde; dazu braucht es eine Strecke mit Zeiten.',
  notRecording: 'Zu seiner Zeit wurde die Strecke nicht aufgezeichnet.',
  hole: 'Zu seiner Zeit hat die Aufzeichnung eine Lücke.',
};
