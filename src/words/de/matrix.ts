import type { Words } from '../words.ts';

export const matrix: Words['matrix'] = {
  region: 'Urteile',
  caption: 'Urteil für jedes Fahrzeug an jedem Hindernis, in Fahrt- und Konvoireihenfolge',
  obstacle: 'Hindernis',
  unnamed: 'Ohne Namen',
  place: (name) => `Platz von ${name} im Konvoi: ziehen, oder Pfeiltasten`,
  workingOut: 'wird berechnet …',
  notWorkedOut: 'nicht berechnet',
  why: 'Warum',
  vehicleOn: (vehicle, obstacle) => `${vehicle} an ${obstacle}`,
  close: 'Schließen',
  openObstacle: 'Hindernis öffnen',
  openVehicle: 'Fahrzeug öffnen',
  openBench: 'Werkbank öffnen',
  bestLine: 'beste Spur',
  pull: (force) => `Ein Zug von etwa ${force}`,
  pullHelp:
    'Nach einem Feldverfahren für das Bergen, mit dessen Reserve. Punkte, Gerät und Boden ansehen, bevor jemand zieht.',
  onSlope: (words) => `Am Hang: ${words}.`,
  drawn: (sure) =>
    `Hundertmal gezogen aus dem ± der Eingaben und dem veröffentlichten Bereich der Haftung, geht es im Kriechgang in ${sure}.`,
  sideways: 'Seitlich versetzt',
  nowhere: (error) =>
    `Auf dem Boden der Hauptspur geht es nirgends, wenn der Fahrer um ${error} nach jeder Seite danebenliegt.`,
  bandsAre: (error) =>
    `Auf dem Boden der Hauptspur, links und rechts in Fahrtrichtung, ein Fahrfehler von ${error} schon abgezogen:`,
  exactly: (line) => `Genau zu treffen: ${line}.`,
  missed: (by) => `Um ${by} verfehlt, geht es vielleicht nicht. Ein Einweiser hält die Räder darauf.`,
  checksWith: (rung) => `Prüfungen mit ${rung}`,
  check: 'Prüfung',
  thereIs: 'Da ist',
  needed: 'Nötig',
  margin: 'Reserve',
  atWorst: 'Am harten Ende',
  engineBraking: 'Motorbremse',
  brakesHold: (cause) => `: ${cause}; den Rest halten die Bremsen`,
  orderHead: 'Wer fährt an welcher Stelle',
  lookingForOrder: 'Suche die Reihenfolge …',
  stop: 'Abbrechen',
  findOrder: 'Reihenfolge finden, in der die meisten ohne Hilfe durchkommen',
  orderHelp:
    'Jede Überfahrt lässt weichen und losen Boden für die nächste schlechter zurück; an beiden Enden bleibt jemand, der ziehen kann.',
  wears:
    'Weiche Stellen sind so beurteilt, wie jedes Fahrzeug sie an seinem Platz im Konvoi findet. Spurrinnen gelten, wie sie gemessen wurden: In nachgiebigem Boden werden sie für die Folgenden tiefer; sieh also nach jeder Durchfahrt wieder hin.',
  orderFault: (error) =>
    `Die Reihenfolge konnte nicht berechnet werden (${error}). Noch einmal versuchen oder die Seite neu laden.`,
  standsSo: 'Der Konvoi steht so.',
  takeOrder: 'Diese Reihenfolge nehmen',
  orderTaken: 'Der Konvoi steht in der empfohlenen Reihenfolge.',
};
