import type { Words } from '../words.ts';

export const ground: Words['ground'] = {
  camberNotKnown: 'Querneigung nicht bekannt',
  noCamber: 'keine Querneigung',
  camber: {
    left: (angle) => `${angle} Querneigung, linke Seite höher`,
    right: (angle) => `${angle} Querneigung, rechte Seite höher`,
  },
  slopeNotKnown: 'Neigung nicht bekannt',
  byTrack: (slope) => `${slope} nach der Strecke`,
  byModel: (slope) => `${slope} laut Höhenmodell`,
  surface: (length, condition, material) => `${length} ${material}, ${condition}`,
  room: (left, leftBound, right, rightBound, above) =>
    `Platz ${left} links (${leftBound}), ${right} rechts (${rightBound}), ${above} nach oben`,
  deep: (size) => `${size} tief`,
  up: (size) => `${size} hinauf`,
  down: (size) => `${size} hinab`,
  high: (size) => `${size} hoch`,
  thick: (size) => `${size} dick`,
  left: (distance) => `${distance} links`,
  right: (distance) => `${distance} rechts`,
  onMain: 'auf der Hauptspur',
  between: (from, to) => `${from} bis ${to}`,
  best: (offset) => `am besten ${offset}`,
  openTo: (from, to) => `offen für Spurweiten von ${from} bis ${to}`,
  bypassNamed: (name) => `${name} (Umfahrung)`,
  offsetNamed: {
    left: (name, distance) => `${name} (${distance} links der Hauptspur)`,
    right: (name, distance) => `${name} (${distance} rechts der Hauptspur)`,
  },
  bypassCall: (name) => `Umfahrung: ${name}`,
  offsetCall: {
    left: (distance) => `${distance} links der Hauptspur`,
    right: (distance) => `${distance} rechts der Hauptspur`,
  },
  offsetTag: {
    left: (distance) => `links ${distance}`,
    right: (distance) => `rechts ${distance}`,
  },
  openToNone: 'für niemanden in diesem Konvoi offen',
  trackWidth: (width) => `Spurweite ${width}`,
  trackWidths: (from, to) => `Spurweiten ${from}–${to}`,
  unnamed: 'ohne Namen',
  notThose: (range, many) => `${range}, aber nicht für ${many} davon`,
  notFor: (range, names) => `${range}, aber nicht für ${names.join(' oder ')}`,
};
