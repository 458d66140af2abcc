import type { Words } from '../words.ts';

export const recovery: Words['recovery'] = {
  noFrontPoint: (vehicle) => `${vehicle} hat vorn keinen Bergepunkt mit angegebener Last.`,
  beyondFrontPoint: (vehicle) =>
    `Der Zug ist größer, als der vordere Bergepunkt von ${vehicle} aushalten darf.`,
  nobody: 'Niemand hier hat die Ausrüstung für diesen Zug: diese Spur nicht befahren.',
  dragged: (vehicle) => `${vehicle} würde mitgezogen: nach hinten an einem Anker festmachen.`,
  ropeShort: (ropeM, parts) =>
    `Seine ${ropeM} m Seil reichen in ${parts === 1 ? 'einem Strang' : `${parts} Strängen`} nicht über das Hindernis hinaus.`,
  lighter: (vehicle) => `${vehicle} ist das leichtere der beiden Fahrzeuge.`,
  by: { winch: 'mit der Winde', tow: 'mit dem Bergegurt' },
  inParts: (parts) => `in ${parts} Seilsträngen`,
};
