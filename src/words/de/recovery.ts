import type { Words } from '../words.ts';

export const recovery: Words['recovery'] = {
  noFrontPoint: (vehicle) => `${vehicle} hat vorn keinen Bergepunkt mit angegebener Last.`,
  beyondFrontPoint: (vehicle) =>
    `Der Zug ist größer, als der vordere Bergepunkt von ${vehicle} aushalten darf.`,
  nobody:
    'Niemand, der hier ohne Hilfe vorbeikommt, hat die Ausrüstung für diesen Zug: diese Spur nicht befahren.',
  behind: (vehicle) => `${vehicle} kommt dahinter: erst vorbeilassen oder den Platz tauschen.`,
  anchorAhead: 'Sie braucht vorn einen Anker, der sicher hält, und jemanden dort, der ihn setzen kann.',
  dragged: (vehicle) => `${vehicle} würde mitgezogen: nach hinten an einem Anker festmachen.`,
  ropeShort: (ropeM, parts) =>
    `Seine ${ropeM} m Seil reichen in ${parts === 1 ? 'einem Strang' : `${parts} Strängen`} nicht über das Hindernis hinaus.`,
  lighter: (vehicle) => `${vehicle} ist das leichtere der beiden Fahrzeuge.`,
  by: { winch: 'mit der Winde', tow: 'mit dem Bergegurt', 'own winch': 'mit der eigenen Winde' },
  inParts: (parts) => `in ${parts} Seilsträngen`,
};
