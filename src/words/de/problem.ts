import type { Words } from '../words.ts';

export const problem: Words['problem'] = {
  theFile: 'die Datei',
  header: 'der Kopf der Datei',
  device: 'dieses Gerät',
  line: (line) => `Zeile ${line}`,
  heightOf: (which, all) => `Höhe ${which} von ${all}`,
  times: (times) => `(${times} Mal, hier zuerst)`,
  oneOf: {
    features: 'Form',
    heldGrips: 'angenommener Kraftschluss',
    lines: 'Spur',
    obstacles: 'Hindernis',
    outcomes: 'Ausgang',
    photos: 'Foto',
    surveyed: 'Hindernis',
    vehicles: 'Fahrzeug',
    visits: 'Begehung',
    waypoints: 'Wegpunkt',
  },
};
