import type { Words } from '../words.ts';

export const sheet: Words['sheet'] = {
  title: (trip) => `${trip}: Einweisung`,
  unnamedTrip: 'Fahrt ohne Namen',
  unnamedTrack: 'Strecke ohne Namen',
  noTrack: 'keine Strecke',
  travelled: (direction) => `gefahren ${direction}`,
  obstacles: (many) => `${many} ${many === 1 ? 'Hindernis' : 'Hindernisse'}`,
  vehicles: (many) => `${many} ${many === 1 ? 'Fahrzeug' : 'Fahrzeuge'}`,
  against:
    'Gegen die Aufzeichnungsrichtung. Links und rechts gelten so, wie der Konvoi an jedes Hindernis kommt; die Namen der Spuren wurden in Aufzeichnungsrichtung vergeben.',
  before: 'Bevor jemand losfährt',
  who: 'Wer wo fährt',
  nothingJudged: 'Keine Hindernisse oder keine Fahrzeuge: nichts wird beurteilt.',
  inOrder: 'Die Hindernisse der Reihe nach',
  mapKey: 'Je dicker, desto steiler; ab 15° mit Querstrichen.',
  order: 'Die Reihenfolge',
  asEntered: (unaided, all) =>
    `Der Konvoi wie eingetragen: So kommen die meisten ohne Hilfe durch, ${unaided} von ${all}, an jedem Ende jemand, der ziehen kann, wo es ihn gibt.`,
  otherOrder: (unaided, all) =>
    `Nicht die eingetragene Reihenfolge, sondern die, in der die meisten ohne Hilfe durchkommen: ${unaided} von ${all}, an jedem Ende jemand, der ziehen kann, wo es ihn gibt.`,
  pulls: 'Wer Zug braucht, und von wem',
  about: (force) => `etwa ${force}`,
  haltedAt: (vehicle, number, verdict) => `${vehicle} bei ${number} (${verdict})`,
  halted: (list) => `Auf keiner Spur durch: ${list}. Das vor der Abfahrt klären.`,
  moreThanOnce: 'Mehr als einmal:',
  seeAbove: 'siehe oben.',
  obstacle: 'Hindernis',
  elseAsItComes: 'Wo nicht mehr gesagt ist: ohne Hilfen, auf der Hauptspur.',
  howOften:
    '„80 von 100“: so oft geht es im Kriechtempo, wenn jedes Maß aus dem gezogen wird, was gemessen wurde, mit seinem ±; immer, wo keine Zahl steht.',
  bypass: 'Umfahrung',
  lines: (list) => `Spuren: ${list}`,
  byEye: (values, all) => `Nach Augenmaß: ${values} von ${all} Werten`,
  measureAgain: (faults) => `Noch einmal messen, bevor sich jemand darauf verlässt: ${faults}`,
};
