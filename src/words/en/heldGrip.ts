/** Ground that is held slipperier than tables print, after what vehicles did on it. */
export const heldGrip = {
  peak: {
    label: 'Adhesion held',
    sentence:
      'Least peak adhesion that is reckoned with on this ground; it lowers what tables print and raises nothing.',
  },
  held: (peak: string, printed: string) => `held slipperier after outcomes: ${peak} instead of ${printed}`,
  ground: (material: string, condition: string, held: string) =>
    `${material[0].toUpperCase()}${material.slice(1)}, ${condition}: ${held}.`,
  asDry: 'It is held so when dry, and wet it is taken to be no less slippery.',
  everywhere: 'So it is everywhere in this trip, in verdicts, grades and the briefing.',
  hold: (peak: string, printed: string, trip: string) =>
    `Hold it slipperier in “${trip}”: ${peak} instead of ${printed}`,
  release: 'Take the tables’ grip again',
  step: {
    hold: (ground: string) => `hold ${ground} slipperier`,
    release: (ground: string) => `take ${ground} as tables print again`,
  },
};
