/** The head of every screen: the trip's name, the steps back, and how one wants to see things. */
export const header = {
  tripName: 'Trip name',
  tripNameHint: 'Name of the trip',
  keeping: { kept: 'stored', waiting: 'storing', failed: 'not stored' },
  undo: 'Undo',
  undoStep: (step: string) => `Undo: ${step}`,
  nothingToUndo: 'Nothing to undo',
  redo: 'Redo',
  redoStep: (step: string) => `Redo: ${step}`,
  nothingToRedo: 'Nothing to redo',
  letGo: 'Let go: a GPX track, or a trip file',
  view: 'View',
  viewGroup: 'Units and light',
  offlineReady: 'Ready without network',
  units: 'Units',
  system: { metric: 'Metric (cm, m, kg)', imperial: 'Imperial (in, ft, lb)' },
  light: 'Light',
  scheme: { day: 'Day', sun: 'Full sun', night: 'Night' },
  language: 'Language',
  asDevice: 'As the device',
  storeFirst: 'First see to it that this trip is stored: what is not would be lost.',
  photosFirst:
    'First pin or leave out the photos that wait under Pins from photos, of this trip or another: they would be lost.',
  readFirst: 'First let the photos be read that were just chosen: they would be lost.',
  drawFirst:
    'First end the path that is half drawn on the map: this device cannot store it, and it would be lost.',
  step: {
    renameTrip: 'rename the trip',
    turnConvoy: 'turn the convoy around',
    keepBoth: 'keep both',
  },
};
