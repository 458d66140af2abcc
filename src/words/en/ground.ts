/** Ground, shapes and lines in a few words. */
export const ground = {
  camberNotKnown: 'camber not known',
  noCamber: 'no camber',
  camber: {
    left: (angle: string) => `${angle} camber, left side high`,
    right: (angle: string) => `${angle} camber, right side high`,
  },
  slopeNotKnown: 'slope not known',
  byTrack: (slope: string) => `${slope} by the track`,
  byModel: (slope: string) => `${slope} by the elevation model`,
  surface: (length: string, condition: string, material: string) => `${length} of ${condition} ${material}`,
  room: (left: string, leftBound: string, right: string, rightBound: string, above: string) =>
    `room ${left} left (${leftBound}), ${right} right (${rightBound}), ${above} above`,
  deep: (size: string) => `${size} deep`,
  up: (size: string) => `${size} up`,
  down: (size: string) => `${size} down`,
  high: (size: string) => `${size} high`,
  thick: (size: string) => `${size} thick`,
  /** Of the convoy's way: to the left or right of where it is to be. */
  left: (distance: string) => `${distance} left`,
  right: (distance: string) => `${distance} right`,
  onMain: 'on the main line',
  between: (from: string, to: string) => `${from} to ${to}`,
  best: (offset: string) => `best ${offset}`,
  openTo: (from: string, to: string) => `open to track widths of ${from} to ${to}`,
  bypassNamed: (name: string) => `${name} (bypass)`,
  offsetNamed: {
    left: (name: string, distance: string) => `${name} (${distance} to the left of the main line)`,
    right: (name: string, distance: string) => `${name} (${distance} to the right of the main line)`,
  },
  bypassCall: (name: string) => `bypass: ${name}`,
  offsetCall: {
    left: (distance: string) => `${distance} left of main line`,
    right: (distance: string) => `${distance} right of main line`,
  },
  offsetTag: {
    left: (distance: string) => `left ${distance}`,
    right: (distance: string) => `right ${distance}`,
  },
  openToNone: 'open to none of this convoy',
  trackWidth: (width: string) => `track width ${width}`,
  trackWidths: (from: string, to: string) => `track widths ${from}–${to}`,
  unnamed: 'unnamed',
  notThose: (range: string, many: number) => `${range}, not ${many} of those`,
  notFor: (range: string, names: readonly string[]) => `${range}, not ${names.join(' or ')}`,
};
