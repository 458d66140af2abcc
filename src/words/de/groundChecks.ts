import type { Words } from '../words.ts';

export const groundChecks: Words['groundChecks'] = {
  endsFirst: 'Das Ende liegt vor dem Beginn.',
  leftEndRight: 'Das linke Ende liegt rechts vom rechten.',
  exchange: 'Die beiden vertauschen, oder noch einmal messen.',
  tooDeep: 'Tiefer, als die eigene Breite zulässt: Die Seiten wären fast senkrecht.',
  measureRut: 'Die Breite von Schulter zu Schulter messen, die Tiefe von einer Latte darüber aus.',
  measureDitch: 'Die Breite von Kante zu Kante messen.',
  measureHole: 'Länge und Breite von Rand zu Rand messen.',
  beyondRoom: {
    rut: 'Diese Spurrille reicht über den Platz hinaus, der für die Spur eingetragen ist.',
    hole: 'Dieses Loch reicht über den Platz hinaus, der für die Spur eingetragen ist.',
  },
  measureRoom: 'Den Platz links und rechts der Spur noch einmal messen, oder wo es liegt.',
  beyondEnds: 'Es liegt außerhalb der Enden des Hindernisses.',
  makeLonger: 'Das Hindernis verlängern, oder messen, wo es liegt.',
  tyresWider: 'Die Reifen stehen breiter als das Fahrzeug.',
  tyresWiderDone: 'Die Breite über die Spiegel und die Spurweiten prüfen.',
  lowestAbove: 'Der niedrigste Reifendruck liegt über dem Reifendruck.',
  lowestAboveDone: 'Den Druck nach dem Ablassen eintragen.',
  bellyAbove: 'Der Unterboden liegt höher als die Schweller.',
  bellyAboveDone: 'Das tiefste feste Teil zwischen den Achsen messen.',
  partTimeCentre: 'Ein zuschaltbarer Allrad hat kein Mitteldifferential.',
  partTimeCentreDone: '„Ohne“ wählen, oder permanenten Allrad.',
};
