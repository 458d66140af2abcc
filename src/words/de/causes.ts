import type { Words } from '../words.ts';

export const causes: Words['causes'] = {
  touches: {
    'front corner': 'setzt vorn auf',
    'rear corner': 'setzt mit dem Heck auf',
    'crest of the belly': 'hängt mit dem Unterboden auf der Kuppe',
    belly: 'Unterboden setzt auf',
    'left sill': 'linker Schweller setzt auf',
    'right sill': 'rechter Schweller setzt auf',
    'front differential': 'vorderes Differential setzt auf',
    'rear differential': 'hinteres Differential setzt auf',
  },
  nearTipping: {
    left: 'hängt nach links, nahe am Kippen',
    right: 'hängt nach rechts, nahe am Kippen',
    back: 'Front hoch, nahe am Überschlag nach hinten',
    forward: 'Front tief, nahe am Überschlag nach vorn',
  },
  tips: 'es kippt',
  slides: [
    'Vorderräder rutschen nach links',
    'Vorderräder rutschen nach rechts',
    'Hinterräder rutschen nach links',
    'Hinterräder rutschen nach rechts',
  ],
  brakesOnClimb: 'die Bremsen halten es in der Steigung nicht',
  slidesDown: 'die Räder rutschen auf dem Weg nach unten',
  waterCarries: 'das Wasser trägt es',
  wheelsSpin: (wheels) =>
    wheels.length > 1
      ? `Räder ${wheels.join(' und ')} in der Luft, drehen durch`
      : `Rad ${wheels.join()} in der Luft, dreht durch`,
  wheelsLetGo: (wheels) =>
    `${wheels.length > 1 ? 'Räder' : 'Rad'} ${wheels.join(' und ')} in der Luft, und ein offenes Differential lässt die Motorbremse ins Leere gehen`,
  againstStep: (wheel) => `Rad ${wheel} steht vor einer Stufe`,
  engine: 'Motor und Übersetzung',
  grip: 'Haftung des Untergrunds',
  noRoom: { left: 'links zu wenig Platz', right: 'rechts zu wenig Platz' },
  tooTall: 'zu hoch für die Durchfahrt',
  overWading: 'Wasser über der Wattiefe',
  flowCarries: 'fließendes Wasser über dem Kabinenboden trägt es fort',
  flowPushes: 'fließendes Wasser drückt es von der Spur',
  softGivesWay: 'weicher Boden gibt nach',
  softTwoDriven: 'weicher Boden mit zwei angetriebenen Rädern: dafür gibt es keine Regel',
  slopeNotKnown: 'Neigung nicht bekannt: Neigungsmesser auf eine gerade Latte längs der Spur legen',
  camberNotKnown: 'Querneigung nicht bekannt: Neigungsmesser auf eine gerade Latte quer zur Spur legen',
  tooSteep: 'Neigung und Querneigung zusammen sind steiler als jedes Gelände: beide noch einmal messen',
  placeNotKnown:
    'Neigung, Querneigung oder ein Maß dieser Stelle ist nicht bekannt oder kann nicht stimmen: dort messen',
  vehicleNotKnown: (values) => `von diesem Fahrzeug nicht bekannt: ${values}`,
  vehicleCannotBe: (what) => `dieses Fahrzeug kann es nicht geben: ${what}`,
  bounds: {
    soft: 'weicher Boden: diese schnellen Grenzen decken ihn nicht ab',
    leans: { left: 'hängt nach links', right: 'hängt nach rechts' },
    noseUp: 'Front hoch',
    noseDown: 'Front tief',
    slides: {
      front: { left: 'rutscht vorn nach links', right: 'rutscht vorn nach rechts' },
      rear: { left: 'rutscht hinten nach links', right: 'rutscht hinten nach rechts' },
    },
    tooSteepDown: 'zu steil, um es auf dem Weg nach unten zu halten',
    liftsAndSpins: (wheel) => `Rad ${wheel} hebt ab und dreht durch`,
    noseTouches: 'setzt vorn auf',
    tailTouches: 'setzt mit dem Heck auf',
    bellyHangs: 'hängt mit dem Unterboden auf der Kuppe',
  },
};
