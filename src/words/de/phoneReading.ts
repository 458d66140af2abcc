import type { Words } from '../words.ts';

export const phoneReading: Words['phoneReading'] = {
  head: 'Mit diesem Telefon ablesen',
  close: 'Schließen',
  faults: {
    moving: 'Das Telefon hat sich bewegt. Hinlegen und warten, bis es meldet, dass es ruhig liegt.',
    'not turned':
      'Das Telefon wurde nicht umgedreht, Ende gegen Ende. Auf derselben Stelle um eine halbe Drehung drehen.',
    'too far off':
      'Die beiden Ablesungen weichen stärker voneinander ab, als ein Telefon je daneben liegt. Eine feste, fast ebene Stelle nehmen und es zweimal auf denselben Platz legen.',
  },
  slope: 'Neigung',
  camber: 'Querneigung',
  climbs: 'steigt',
  falls: 'fällt',
  leftHigh: 'linke Seite hoch',
  rightHigh: 'rechte Seite hoch',
  level: 'eben',
  noSensor: 'Dieses Gerät meldet nicht, wie es liegt.',
  noSensorWhy:
    'Es hat keinen solchen Sensor, oder die Seite wurde nicht über eine sichere Adresse (https) geöffnet. Einen Neigungsmesser ablesen und den Wert eingeben.',
  refused: 'Der Browser durfte den Sensor nicht lesen.',
  refusedWhy:
    'Bewegung und Ausrichtung für diese Seite in den Einstellungen erlauben, die Seite neu laden, dann hierher zurückkommen.',
  crosswise: 'Dieses Gerät lässt sich nicht längs der Spur auflegen:',
  crosswiseWhy:
    'Seine Oberkante ist eine der langen Kanten. Ein Telefon nehmen oder den Wert eines Neigungsmessers eingeben.',
  lay: (wind) =>
    `Eine gerade Latte auf den Boden legen und das Telefon mit dem Rücken darauf, die lange Kante längs der Spur, die Oberkante in Aufzeichnungsrichtung${wind === null ? '' : ` (hier etwa ${wind})`}.`,
  layReversed:
    'Diese Fahrt geht in Gegenrichtung: die Oberkante nach hinten richten, entgegen der Fahrtrichtung.',
  layBoth:
    'Für die Neigung liegt die Latte längs der Spur, für die Querneigung quer dazu, das Telefon zeigt weiter längs; auf einem Brett, das in beiden Richtungen aufliegt, beide nehmen.',
  winds: ['Norden', 'Nordosten', 'Osten', 'Südosten', 'Süden', 'Südwesten', 'Westen', 'Nordwesten'],
  reading: 'Lese …',
  onItsBack: 'Das Telefon auf den Rücken legen, Bildschirm nach oben.',
  holdStill: 'Ruhig liegen lassen …',
  liesStill: 'Liegt ruhig.',
  spread: (plusMinus, zeroed, how, howPlusMinus) =>
    `± ${plusMinus} aus Streuung und Nullpunkt${zeroed ? '' : ', denn dieses Telefon wurde nie genullt'}; es zählt als ermittelt ${how}, ± ${howPlusMinus}.`,
  takeThese: 'Beide nehmen',
  slopeOnly: 'Nur Neigung',
  camberOnly: 'Nur Querneigung',
  zero: 'Nullpunkt',
  notZeroed:
    'Noch nicht genullt. Ein Sensor, eine Hülle oder eine Kamera, die vorsteht, kann einige Grad ausmachen.',
  zeroedOn: (date, off) =>
    `Genullt am ${date}: Auf ebenem Boden zeigt dieses Telefon ${off}, das wird abgezogen. Mit einer anderen Hülle neu nullen.`,
  toZero: 'Zum Nullen auf eine feste, fast ebene Stelle legen.',
  readThenTurn: 'Ablesen, dann umdrehen',
  forget: 'Nullpunkt vergessen',
  nowTurn:
    'Jetzt das Telefon auf derselben Stelle umdrehen, die Oberkante dorthin, wo die Unterkante war, und liegen lassen.',
  readTurned: 'Umgedreht ablesen',
  leave: 'Lassen, wie es war',
};
