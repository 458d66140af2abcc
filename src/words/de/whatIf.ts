import type { Words } from '../words.ts';

export const whatIf: Words['whatIf'] = {
  rearEngaged: 'Sperre hinten eingelegt',
  rearFitted: 'eine Sperre hinten eingebaut',
  frontEngaged: 'Sperre vorn eingelegt',
  frontFitted: 'eine Sperre vorn eingebaut',
  tyresDown: 'Luft abgelassen',
  tyresDownBy: 'zwei Fünftel der Luft abgelassen',
  tyresDownGrant: 'soweit Reifen und Felge es zulassen',
  biggerTyres: 'größere Reifen',
  biggerTyresGrant: 'wenn sie in die Radkästen passen; Böschungswinkel unverändert',
  nothingOnRoof: 'nichts auf dem Dach',
  fillIn: 'Spurrillen und Löcher auffüllen',
  fillInGrant: 'wenn die Füllung beim Überfahren hält',
  stones: 'Steine vor die Stufe, 45°',
  stonesGrant: 'wenn sie beim Überfahren liegen bleiben',
  dry: 'trockener Untergrund',
  wet: 'nasser Untergrund',
  first: 'als Erster des Konvois gefahren',
  firstGrant: 'wer folgt, findet den Boden um eine Durchfahrt weicher',
  taped: 'jedes Maß mit dem Maßband',
  tapedGrant: 'wenn das Maßband zeigt, was eingetragen ist',
  errorHalved: 'halber Fahrfehler',
  errorHalvedGrant:
    'die schlimmste Stelle innerhalb auf beiden Seiten, gegen die schlimmste innerhalb der Hälfte',
  spotter: 'ein Einweiser davor, die Spur gehalten auf',
  spotterGrant:
    'die schlimmste Stelle innerhalb des Fahrfehlers, gegen die beste Spur dort, wenn jedes Rad gesehen wird',
};
