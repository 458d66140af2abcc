/** Where something is wrong, and how often. */
export const problem = {
  theFile: 'the file',
  header: 'the header',
  device: 'this device',
  line: (line: number) => `line ${line}`,
  heightOf: (which: number, all: number) => `height ${which} of ${all}`,
  times: (times: number) => `(${times} times, first here)`,
  /** One of a list of a file, before its number. */
  oneOf: {
    features: 'shape',
    heldGrips: 'adhesion held',
    lines: 'line',
    obstacles: 'obstacle',
    outcomes: 'outcome',
    photos: 'photo',
    surveyed: 'obstacle',
    vehicles: 'vehicle',
    visits: 'visit',
    waypoints: 'waypoint',
  },
};
