import type { Words } from '../words.ts';

export const heldGrip: Words['heldGrip'] = {
  peak: {
    label: 'Angenommener Kraftschluss',
    sentence:
      'Geringster größter Kraftschluss, mit dem auf diesem Boden gerechnet wird; er senkt, was Tabellen sagen, und hebt nichts.',
  },
  held: (peak, printed) => `nach Ausgängen rutschiger angenommen: ${peak} statt ${printed}`,
  ground: (material, condition, held) =>
    `${material[0].toUpperCase()}${material.slice(1)}, ${condition}: ${held}.`,
  asDry: 'So gilt es trocken, und nass gilt er als nicht weniger rutschig.',
  everywhere: 'So gilt es überall in dieser Fahrt, in Urteilen, Graden und der Einweisung.',
  hold: (peak, printed, trip) => `In „${trip}“ rutschiger annehmen: ${peak} statt ${printed}`,
  release: 'Wieder wie in den Tabellen',
  step: {
    hold: (ground) => `${ground} rutschiger annehmen`,
    release: (ground) => `${ground} wieder wie in den Tabellen`,
  },
};
