/** What must be seen to before one vehicle pulls another. */
export const recovery = {
  noFrontPoint: (vehicle: string) => `${vehicle} has no rated recovery point in front.`,
  beyondFrontPoint: (vehicle: string) => `The pull is beyond the rated front point of ${vehicle}.`,
  nobody: 'Nobody here has the gear for this pull: keep off this line.',
  dragged: (vehicle: string) => `${vehicle} would be dragged: tie it back to an anchor.`,
  ropeShort: (ropeM: number, parts: number) =>
    `Its ${ropeM} m of rope do not reach past the obstacle in ${parts} parts.`,
  lighter: (vehicle: string) => `${vehicle} is the lighter of the two.`,
  by: { winch: 'by winch', tow: 'by tow' },
  inParts: (parts: number) => `in ${parts} parts of rope`,
};
