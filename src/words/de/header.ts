import type { Words } from '../words.ts';

export const header: Words['header'] = {
  tripName: 'Name der Fahrt',
  tripNameHint: 'Name der Fahrt',
  keeping: { kept: 'gespeichert', waiting: 'speichert', failed: 'nicht gespeichert' },
  undo: 'Rückgängig',
  undoStep: (step) => `Rückgängig: ${step}`,
  nothingToUndo: 'Nichts rückgängig zu machen',
  redo: 'Wiederholen',
  redoStep: (step) => `Wiederholen: ${step}`,
  nothingToRedo: 'Nichts zu wiederholen',
  letGo: 'Loslassen: ein GPX-Track oder eine Fahrtdatei',
  view: 'Ansicht',
  viewGroup: 'Einheiten, Licht und Sprache',
  offlineReady: 'Bereit ohne Netz',
  units: 'Einheiten',
  system: { metric: 'Metrisch (cm, m, kg)', imperial: 'Imperial (in, ft, lb)' },
  light: 'Licht',
  scheme: { day: 'Tag', sun: 'Pralle Sonne', night: 'Nacht' },
  language: 'Sprache',
  asDevice: 'Wie das Gerät',
  storeFirst: 'Erst dafür sorgen, dass diese Fahrt gespeichert ist: Was es nicht ist, ginge verloren.',
  photosFirst:
    'Erst die wartenden Fotos unter „Hindernisse aus Fotos“ setzen oder weglassen, in dieser Fahrt oder einer anderen: Sie gingen verloren.',
  readFirst: 'Erst die Fotos fertig lesen lassen, die gerade gewählt wurden: Sie gingen verloren.',
  drawFirst:
    'Erst den halb gezeichneten Verlauf auf der Karte abschließen: Dieses Gerät kann ihn nicht speichern, er ginge verloren.',
  step: {
    renameTrip: 'Fahrt umbenennen',
    turnConvoy: 'Konvoi umdrehen',
    keepBoth: 'beide behalten',
  },
};
