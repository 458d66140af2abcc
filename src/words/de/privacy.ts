import type { Words } from '../words.ts';

/** Was von Menschen mit einer Datei hinausgeht, und unter welchen Lizenzen das Programm steht. */
export const privacy: Words['privacy'] = {
  head: 'Zum Weitergeben',
  help: 'Ohne Menschen, wenn nichts anderes gewählt ist: der Track, die Hindernisse mit ihren Linien und in einer Fahrtdatei die Fahrzeuge.',
  goesAlong: 'Geht mit',
  carried: {
    drivers: 'Namen der Fahrer',
    notes: 'Notizen',
    times: 'Zeiten der Aufzeichnung',
    photos: 'Fotos',
  },
  photosHelp:
    'Fotos enthalten weder Ort noch Zeit der Aufnahme. Fahrer und Fotos gehen nur in eine Fahrtdatei ein.',
  tripFile: 'Fahrtdatei',
  licences: 'Lizenzen',
};
