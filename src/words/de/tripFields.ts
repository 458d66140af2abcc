import type { Words } from '../words.ts';

export const tripFields: Words['tripFields'] = {
  direction: {
    label: 'Richtung',
    sentence: 'In welcher Richtung der Konvoi die aufgezeichnete Strecke fährt.',
  },
  kind: { label: 'Art', sentence: 'Eine Strecke (track) wurde aufgezeichnet, eine Route (route) geplant.' },
  lng: { label: 'Länge (Ost)', sentence: 'Grad in WGS 84, Ost ist positiv.' },
  lat: { label: 'Breite (Nord)', sentence: 'Grad in WGS 84, Nord ist positiv.' },
  elevationM: { label: 'Höhe', sentence: 'Über dem Meeresspiegel; null, wo sie nicht bekannt ist.' },
  nodeM: { label: 'Zwischen Knoten', sentence: 'Wie weit die Knoten des Höhenmodells auseinanderliegen.' },
  errorM: {
    label: 'Höhenfehler',
    sentence:
      'Des Höhenmodells, wie sein Herausgeber ihn angibt: Standardabweichung oder mittlerer quadratischer Fehler.',
  },
  isUsed: {
    label: 'In Gebrauch',
    sentence: 'Ob Neigungen aus dem Höhenmodell gelesen werden statt aus der Aufzeichnung.',
  },
  camberRad: {
    label: 'Querneigung',
    sentence: 'Des Hangs, linke Seite hoch ist positiv; null, wo sie nicht bekannt ist.',
  },
  stationM: { label: 'Station', sentence: 'Entlang der Strecke ab ihrem ersten Punkt; Lücken zählen nicht.' },
  offsetM: {
    label: 'Versatz',
    sentence: 'Mit dem Maßband seitlich von der Hauptspur aus; links ist positiv.',
  },
};
