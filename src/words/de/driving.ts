import type { Words } from '../words.ts';

export const driving: Words['driving'] = {
  firstLow: 'erster Gang mit Untersetzung',
  firstGear: 'erster Gang',
  holds: (gear) => `${gear} hält es auf dem Weg nach unten`,
  justHolds: (gear) => `${gear} hält es auf dem Weg nach unten gerade noch, Fuß bereit auf der Bremse`,
  descentControl: (gear) => `Bergabfahrhilfe an, ${gear}`,
  footOnBrake: (gear) => `${gear} und Fuß auf der Bremse`,
  engineHolds: (have, need) => `der Motor hält ${have} von ${need}`,
  allOfIt: (said, rung) => `${said}, mit ${rung} alles davon`,
  down: (brakes, said) => `hinunter mit: ${brakes}; ${said}`,
  onTheWayDown:
    'Gang vor der Kante wählen, Fuß weg von der Kupplung, Front gerade den Hang hinunter; eine Automatik im ersten Gang halten, sie hält weniger.',
  stability: {
    none: '',
    'always on':
      'Die Fahrstabilitätskontrolle bleibt an: Rutscht es, kann sie ein Rad abbremsen und Gas wegnehmen, also wenig lenken.',
    'off in low range':
      'Die Fahrstabilitätskontrolle nimmt sich in der Untersetzung zurück; ohne Untersetzung: Rutscht es, kann sie ein Rad abbremsen und Gas wegnehmen, also wenig lenken.',
    'off with centre locked':
      'Die Fahrstabilitätskontrolle nimmt sich bei gesperrter Mitte zurück; vorher: Rutscht es, kann sie ein Rad abbremsen und Gas wegnehmen, also wenig lenken.',
  },
  side: { left: 'links', right: 'rechts' },
  highSide: { left: 'links, auf der höheren Seite', right: 'rechts, auf der höheren Seite' },
  wellAhead: 'weit voraus',
  aheadAbove: 'voraus und oberhalb',
  behindAbove: 'dahinter und oberhalb',
  pastEnd: (end) => `${end}, über das Hindernis hinaus`,
  noSafeSide: (end) => `keine sichere Seite: ${end}, über das Hindernis hinaus, neben der Spur`,
  outOfWater: (place) => `${place}, nicht im Wasser`,
  stoppedOn: {
    uphill: 'bergauf',
    downhill: 'bergab',
    'side slope': 'am Schräghang',
    water: 'im Wasser',
    'level ground': 'in der Ebene',
  },
  ifItStops: {
    uphill:
      'Fußbremse und Kupplung (Automatik: Fußbremse), Handbremse. Auf Zeichen des Einweisers Rückwärtsgang mit Untersetzung, am Motor gerade in den eigenen Spuren zurück. Nicht am Hang wenden, kein Leerlauf, nicht auf der Kupplung rollen.',
    downhill:
      'Fußbremse, Handbremse, auf die Fahrtleitung warten. Rutscht es: weg von der Bremse, bis die Räder drehen, dann sanft wieder bremsen, gerade hinunter. Nicht am Hang wenden.',
    'side slope':
      'Bremse halten, still sitzen, nicht bergauf lenken. Einer nach dem anderen aussteigen, nur auf der höheren Seite. Es wird zur höheren Seite hin festgemacht, bevor es sich wieder bewegt.',
    water:
      'einen stehen gebliebenen Motor nicht anlassen, es kann Wasser darin sein. Gurte ab, Fenster auf. Aussteigen, wenn die Fahrtleitung es sagt, oder sofort, wenn das Wasser steigt.',
    'level ground':
      'weg vom Gas: durchdrehende Räder graben sich ein. Rückwärtsgang mit Untersetzung, gerade in den eigenen Spuren zurück, ein Mal. Klappt das nicht, die Fahrtleitung rufen.',
  },
};
