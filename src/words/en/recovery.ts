/** What must be seen to before one vehicle pulls another. */
export const recovery = {
  noFrontPoint: (vehicle: string) => `${vehicle} has no rated recovery point in front.`,
  beyondFrontPoint: (vehicle: string) => `The pull is beyond the rated front point of ${vehicle}.`,
  nobody: 'Nobody who gets past here without help has the gear for this pull: keep off this line.',
  behind: (vehicle: string) => `${vehicle} comes behind: let it pass first, or change places.`,
  anchorAhead: 'It needs an anchor ahead that is sure to hold, and somebody there who knows how to rig it.',
  dragged: (vehicle: string) => `${vehicle} would be dragged: tie it back to an anchor.`,
  ropeShort: (ropeM: number, parts: number) =>
    `Its ${ropeM} m of rope do not reach past the obstacle in ${parts} parts.`,
  lighter: (vehicle: string) => `${vehicle} is the lighter of the two.`,
  by: { winch: 'by winch', tow: 'by tow', 'own winch': 'by its own winch' },
  inParts: (parts: number) => `in ${parts} parts of rope`,
};
