/** An elevation model along the track: whose elevations slopes are read off, and how the two differ. */
export const trackModel = {
  title: 'Elevation model',
  offer: (name: string) =>
    `${name} lies under the map. Laid along the track it checks the recorded elevations, can stand in for them, and gives the cross slope.`,
  lay: 'Lay it along the track',
  layInstead: (name: string) => `Lay ${name} along the track instead`,
  laying: (share: string) => `Reading the model along the track: ${share}`,
  stop: 'Stop',
  none: (name: string) => `${name} has no ground along this track. Nothing was changed.`,
  failed: (fault: string) => `The model could not be read along the track (${fault}). Nothing was changed.`,
  readOff: 'Slopes are read off',
  from: { recorded: 'the recording', model: 'the elevation model' },
  about: (name: string, nodes: string, baseline: string) =>
    `${name}, nodes ${nodes} apart: a pitch shorter than ${baseline} does not show in it. What is read at a pin counts before it.`,
  knowsAll: 'It has ground at every point of the track.',
  knowsSome: (share: string) =>
    `It has ground at ${share} of the points. Elsewhere slopes read off it are not known; nothing stands in for them.`,
  assumed: 'Until someone enters it, an error is assumed that is usual for such nodes.',
  stored: 'What was read off stays with the trip; the file is not needed again.',
  remove: 'Take the model off the track',
  step: {
    lay: 'lay an elevation model along the track',
    choose: 'choose whose elevations slopes are read off',
    error: 'enter the error of the elevation model',
    remove: 'take the elevation model off the track',
  },
  steepestCamber: 'Steepest cross slope of the hillside',
  /** Of the hillside at a station. */
  camber: {
    left: (angle: string, plusMinus: string) => `hillside ${angle} ± ${plusMinus}, left side high`,
    right: (angle: string, plusMinus: string) => `hillside ${angle} ± ${plusMinus}, right side high`,
  },
  hillside: 'Cross slope is that of the hillside, not of the formed track.',
  elevation: {
    recorded: (elevation: string) => `recorded ${elevation}`,
    model: (elevation: string) => `model ${elevation}`,
  },
  slopesModel: (name: string, nodes: string, error: string, baseline: string) =>
    `Slopes and elevations are those of the elevation model ${name} (nodes ${nodes} apart, off by ${error} as one standard deviation), not those recorded: a pitch shorter than ${baseline} does not show, and where the model has no ground slopes are not known.`,
  slopesRecorded: (name: string) =>
    `Slopes and elevations are those recorded; the elevation model ${name} serves to check them.`,
  agree: {
    everywhere: 'The model and the recording agree wherever both are known.',
    usually: 'The model and the recording usually agree',
    there: (place: string) => `; farthest from that at ${place}, where the two agree.`,
  },
  usual: {
    above: (metres: string) => `The model usually lies ${metres} above the recording`,
    below: (metres: string) => `The model usually lies ${metres} below the recording`,
  },
  most: {
    above: (metres: string, place: string) =>
      `; farthest from that at ${place}, where the model lies ${metres} above.`,
    below: (metres: string, place: string) =>
      `; farthest from that at ${place}, where the model lies ${metres} below.`,
  },
  nowhereBoth: 'Nowhere are both known, so that nothing checks either.',
};
