import type { Words } from '../words.ts';

export const cards: Words['cards'] = {
  asItComes: 'Ohne Hilfen: nichts zuschalten, auf der Hauptspur.',
  wayDown: 'Auf dem Weg nach unten:',
  ifItStopsOn: (place) => `Wenn es stehen bleibt, ${place}:`,
  ifItStops: 'Wenn es stehen bleibt:',
  walkFirst: 'Erst zu Fuß abgehen; im Zweifel nicht fahren. Immer nur ein Fahrzeug im Hindernis.',
  estimated: (what) => `Geschätzt, nicht gemessen: ${what}; ein Urteil aus Schätzwerten ist eine Schätzung.`,
  manyValues: (many) => `${many} Werte dieses Fahrzeugs`,
  stopBefore: (limit) => `: ${limit}. Davor anhalten; die Fahrtleitung fragen.`,
  spotter: 'Einweiser',
  pull: 'Zug',
  pullOf: (force, helper) => `von etwa ${force}: ${helper}.`,
  nobody: 'niemand hier kann ihn geben: nicht befahren',
  ownWinch: 'die eigene Winde, sobald vorn ein Anker gesetzt ist',
  helper: (vehicle, means) => `${vehicle} ${means}; darauf warten`,
};
