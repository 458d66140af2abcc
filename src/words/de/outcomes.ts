import type { Words } from '../words.ts';

export const outcomes: Words['outcomes'] = {
  head: 'Was jedes Fahrzeug tat',
  onTheDay: 'Am Tag',
  open: 'Notieren, was es tat',
  at: 'Hindernis',
  previous: 'Hindernis davor',
  next: 'Nächstes Hindernis',
  none: 'Noch nichts zu notieren',
  noneHelp:
    'Setze die Hindernisse und füge die Fahrzeuge hinzu; dann lässt sich hier notieren, was jedes an jedem tat.',
  fileFirst: 'Erst die Fahrt ablegen',
  fileFirstHelp:
    'Ausgänge liegen bei der eingestuften Strecke, damit der Verein daraus lernt. Lege diese Fahrt einmal im Archiv ab; dann genügt ein Tipp je Fahrzeug.',
  notFiled: 'Dieses Hindernis ist noch nicht im Archiv. Lege die Fahrt noch einmal ab und notiere dann.',
  said: (verdict) => `Gesagt: ${verdict}`,
  notSaid: 'Vorher war nichts gesagt.',
  noted: (word, time) => `Notiert ${time}: ${word}`,
  details: 'Spur, Hilfen, Notiz',
  line: 'Gefahrene Spur',
  aids: 'Eingelegte Hilfen',
  note: 'Notiz',
  keep: 'Diese behalten',
  saved: (vehicle, word) => `${vehicle}: ${word}.`,
  by: 'Notiert von',
  names: 'Mit den Namen der Fahrer',
  namesHelp: 'Sonst sagt ein Ausgang, welches Fahrzeug es war, und nicht, wer fuhr.',
  row: (vehicle, did, said) => `${vehicle}: ${did}. Gesagt: ${said}.`,
  nothingSaid: 'nichts',
  wrongGoes: 'hieß „fährt“, und fuhr nicht',
};
