import type { Words } from '../words.ts';

export const briefDesk: Words['briefDesk'] = {
  unnamedTrip: 'Fahrt ohne Namen',
  track: 'Strecke',
  counts: (obstacles, vehicles) =>
    `${obstacles === 1 ? '1 Hindernis' : `${obstacles} Hindernisse`}, ${vehicles === 1 ? '1 Fahrzeug' : `${vehicles} Fahrzeuge`}`,
  direction: 'Richtung',
  printMatrix: 'Matrix drucken',
  printBriefing: 'Einweisung und Karten drucken',
  saveBriefing: 'Als Seite speichern',
  paperFault: (error) =>
    `Die Einweisung konnte nicht geschrieben werden (${error}). Noch einmal versuchen oder die Seite neu laden.`,
  travelled: (direction) => `Gefahren ${direction}`,
  nothing: 'Noch nichts einzuweisen',
  pinOn: 'Die Hindernisse setzen unter',
  scoutDesk: 'Erkunden',
  addIn: 'Die Fahrzeuge hinzufügen im',
  convoy: 'Konvoi',
  thenHere: 'Dann steht hier das Urteil für jedes Fahrzeug an jedem Hindernis.',
  workedOut: (done, of) => `${done} von ${of} berechnet …`,
  allWorkedOut: (of) => (of === 1 ? 'Ein Urteil, berechnet.' : `${of} Urteile, alle berechnet.`),
  stoppedAt: (done, of) =>
    `Angehalten: ${done} von ${of} berechnet. Aus einem Teil wird nichts geschrieben oder gedruckt.`,
  stop: 'Anhalten',
  goOn: 'Weiter',
  writing: 'Die Einweisung wird geschrieben …',
  estimates: (names) =>
    `Noch aus der Klasse geschätzte Werte: ${names}. Ein Urteil aus Schätzwerten ist ein Schätzwert.`,
  before: 'Bevor jemand losfährt',
};
