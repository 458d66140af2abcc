import type { Words } from '../words.ts';

export const terrainFields: Words['terrainFields'] = {
  bank: {
    side: { label: 'Seite', sentence: 'Seite der Hauptspur, in Aufzeichnungsrichtung gesehen.' },
    distanceM: {
      label: 'Abstand',
      sentence: 'Mit dem Maßband von der Hauptspur bis zum Fuß oder zur Kante.',
    },
    angleRad: { label: 'Winkel', sentence: 'Neigungsmesser auf die Fläche legen.' },
    heightM: { label: 'Höhe', sentence: 'Oberkante über der Spur; ein Abbruch ist negativ.' },
  },
  ditch: {
    xM: {
      label: 'Lage längs',
      sentence: 'Mit dem Maßband entlang der Spur vom Pin bis zur Mitte des Grabens.',
    },
    widthM: { label: 'Breite', sentence: 'Mit dem Maßband von Kante zu Kante, rechtwinklig zum Graben.' },
    depthM: {
      label: 'Tiefe',
      sentence: 'Latte über die Kanten legen, mit dem Maßband bis zum Grund messen.',
    },
    skewRad: {
      label: 'Schräglage',
      sentence:
        'Drehung des Grabens aus der Querlage zur Spur; liegt das linke Ende weiter vorn, ist sie positiv.',
    },
  },
  hole: {
    xM: {
      label: 'Lage längs',
      sentence: 'Mit dem Maßband entlang der Spur vom Pin bis zur Mitte des Lochs.',
    },
    yM: {
      label: 'Lage quer, links der Spur',
      sentence: 'Mit dem Maßband von der Hauptspur bis zur Mitte des Lochs; links ist positiv.',
    },
    lengthM: { label: 'Länge', sentence: 'Mit dem Maßband von Rand zu Rand, längs der Spur.' },
    widthM: { label: 'Breite', sentence: 'Mit dem Maßband von Rand zu Rand, quer zur Spur.' },
    depthM: {
      label: 'Tiefe',
      sentence: 'Latte über die Ränder legen, mit dem Maßband bis zum Grund messen.',
    },
  },
  hump: {
    xM: { label: 'Lage längs', sentence: 'Mit dem Maßband entlang der Spur vom Pin bis zum Scheitel.' },
    lengthM: { label: 'Länge', sentence: 'Mit dem Maßband von Fuß zu Fuß, längs der Spur.' },
    heightM: { label: 'Höhe', sentence: 'Scheitel über der geraden Linie von Fuß zu Fuß.' },
    skewRad: {
      label: 'Schräglage',
      sentence:
        'Drehung des Scheitels aus der Querlage zur Spur; liegt das linke Ende weiter vorn, ist sie positiv.',
    },
  },
  ledge: {
    xM: { label: 'Lage längs', sentence: 'Mit dem Maßband entlang der Spur vom Pin bis zum Fuß der Stufe.' },
    riseM: {
      label: 'Höhe der Stufe',
      sentence: 'Mit dem Maßband von der unteren zur oberen Kante; nach unten ist negativ.',
    },
    faceRad: {
      label: 'Winkel der Stufe',
      sentence: 'Neigungsmesser auf die Stirnfläche legen; 85° ist so gut wie senkrecht.',
    },
    skewRad: {
      label: 'Schräglage',
      sentence:
        'Drehung der Kante aus der Querlage zur Spur; liegt das linke Ende weiter vorn, ist sie positiv.',
    },
  },
  log: {
    xM: {
      label: 'Lage längs',
      sentence: 'Mit dem Maßband entlang der Spur vom Pin bis zur Mitte des Stamms.',
    },
    diameterM: {
      label: 'Durchmesser',
      sentence: 'Mit dem Maßband über den Stamm von Boden zu Boden, oder mit der Kluppe.',
    },
    skewRad: {
      label: 'Schräglage',
      sentence:
        'Drehung des Stamms aus der Querlage zur Spur; liegt das linke Ende weiter vorn, ist sie positiv.',
    },
    fromYM: { label: 'Rechtes Ende', sentence: 'Mit dem Maßband von der Hauptspur aus; links ist positiv.' },
    toYM: { label: 'Linkes Ende', sentence: 'Mit dem Maßband von der Hauptspur aus; links ist positiv.' },
  },
  rock: {
    xM: {
      label: 'Lage längs',
      sentence: 'Mit dem Maßband entlang der Spur vom Pin bis zur Mitte des Felsens.',
    },
    yM: {
      label: 'Lage quer, links der Spur',
      sentence: 'Mit dem Maßband von der Hauptspur bis zur Mitte des Felsens; links ist positiv.',
    },
    heightM: { label: 'Höhe', sentence: 'Mit dem Maßband vom Boden daneben bis zur Oberkante.' },
    lengthM: { label: 'Länge', sentence: 'Mit dem Maßband längs der Spur.' },
    widthM: { label: 'Breite', sentence: 'Mit dem Maßband quer zur Spur.' },
  },
  rut: {
    centreYM: {
      label: 'Mitte, links der Spur',
      sentence: 'Mit dem Maßband von der Hauptspur bis zur Mitte der Spurrille; links ist positiv.',
    },
    widthM: { label: 'Breite', sentence: 'Mit dem Maßband quer zur Spurrille, von Schulter zu Schulter.' },
    depthM: {
      label: 'Tiefe',
      sentence: 'Latte über die Schultern legen, mit dem Maßband bis zum Grund messen.',
    },
    fromM: {
      label: 'Beginn',
      sentence: 'Mit dem Maßband entlang der Spur vom Pin aus; vor dem Pin ist negativ.',
    },
    toM: { label: 'Ende', sentence: 'Mit dem Maßband entlang der Spur vom Pin aus.' },
    runM: { label: 'Ein- und Auslauf', sentence: 'Länge, auf der die Spurrille an jedem Ende ausläuft.' },
    section: {
      label: 'Querschnitt',
      sentence: 'U: flacher Grund und steile Wände. V: Wände, die sich treffen.',
    },
  },
  softPatch: {
    fromM: { label: 'Beginn', sentence: 'Mit dem Maßband entlang der Spur vom Pin aus.' },
    toM: { label: 'Ende', sentence: 'Mit dem Maßband entlang der Spur vom Pin aus.' },
    coneIndexPa: {
      label: 'Kegelindex',
      sentence: 'Kegelpenetrometer in den oberen 15 cm (6 in); Mittel aus mindestens drei Messungen.',
    },
    passesBefore: {
      label: 'Überfahrten seither',
      sentence: 'Fahrzeuge, die seit der Messung darüber gefahren sind.',
    },
    wetness: { label: 'Nässe', sentence: 'Eine Handvoll zusammendrücken: bröselt, hält, tropft.' },
  },
  water: {
    fromM: { label: 'Beginn', sentence: 'Mit dem Maßband entlang der Spur vom Pin bis zum nahen Ufer.' },
    toM: { label: 'Ende', sentence: 'Mit dem Maßband entlang der Spur vom Pin bis zum fernen Ufer.' },
    depthM: {
      label: 'Tiefe',
      sentence: 'Tiefste Stelle auf der Spur, mit einer Stange, von jemandem, für den es sicher ist.',
    },
    flowMps: {
      label: 'Strömung',
      sentence: 'Mit dem Maßband eine Strecke abmessen und einen schwimmenden Stock darauf stoppen.',
    },
  },
  surface: {
    material: { label: 'Untergrund', sentence: 'Worauf die Räder stehen; wo er wechselt, der rutschigste.' },
    condition: {
      label: 'Zustand',
      sentence: 'So, wie er sein wird, wenn der Konvoi da ist; im Zweifel nass.',
    },
  },
  plane: {
    slopeRad: {
      label: 'Neigung',
      sentence:
        'Neigungsmesser auf einer geraden Latte längs der Spur; bergauf ist positiv. In Grad, oder in Prozent mit % dahinter.',
    },
    camberRad: {
      label: 'Querneigung',
      sentence:
        'Neigungsmesser auf einer geraden Latte quer zur Spur; linke Seite höher ist positiv. In Grad, oder in Prozent mit % dahinter.',
    },
  },
  corridor: {
    leftM: {
      label: 'Platz links',
      sentence: 'Mit dem Maßband von der Hauptspur bis zu dem, woran links ein Spiegel oder Rad anstößt.',
    },
    leftBound: { label: 'Linke Seite', sentence: 'Was den Weg links begrenzt.' },
    rightM: {
      label: 'Platz rechts',
      sentence: 'Mit dem Maßband von der Hauptspur bis zu dem, woran rechts ein Spiegel oder Rad anstößt.',
    },
    rightBound: { label: 'Rechte Seite', sentence: 'Was den Weg rechts begrenzt.' },
    headroomM: {
      label: 'Durchfahrtshöhe',
      sentence: 'Mit dem Maßband vom Boden bis zum niedrigsten Ast oder Fels darüber.',
    },
  },
  stretch: {
    lengthM: { label: 'Länge', sentence: 'Mit dem Maßband oder abgeschritten, vom Anfang bis zum Ende.' },
  },
};
