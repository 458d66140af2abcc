import type { Words } from '../words.ts';

export const presets: Words['presets'] = {
  sentence: {
    'rutted climb': 'Zwei Spurrillen an einer Steigung, jede mit ihrer eigenen Tiefe.',
    'cross-axle holes':
      'Löcher abwechselnd links und rechts, etwa einen Radstand auseinander: sie heben Räder über Kreuz.',
    ledge: 'Eine Stufe nach oben oder unten quer über die ganze Spur.',
    ditch: 'Ein Graben quer zur Spur.',
    'side slope': 'Ein Abschnitt, der zur Seite hängt.',
    ford: 'Wasser über der Spur; nur dort zu Fuß hindurch, wo es sicher ist.',
    rocks: 'Felsen, die liegen bleiben, einer unter jeder Radspur.',
    log: 'Ein Baumstamm quer zur Spur, der liegen bleibt.',
    'soft ground': 'Schlamm, Sand oder Moor, das unter einem Rad nachgibt.',
  },
  leftDepth: 'Tiefe der linken Spurrille',
  rightDepth: 'Tiefe der rechten Spurrille',
  rutWidth: 'Breite der Spurrillen',
  rutsApart: {
    label: 'Abstand der Spurrillen, Mitte zu Mitte',
    sentence: 'Mit dem Maßband von der Mitte der einen Rille zur Mitte der anderen.',
  },
  holeDepth: 'Tiefe der Löcher',
  holeLength: 'Länge der Löcher',
  holesApart: {
    label: 'Abstand der Löcher, Mitte zu Mitte',
    sentence:
      'Mit dem Maßband entlang der Spur von der Mitte eines Lochs zur Mitte des nächsten auf der anderen Seite.',
  },
  tallestRock: 'Höchster Fels',
  secondRock: 'Zweiter Fels',
};
