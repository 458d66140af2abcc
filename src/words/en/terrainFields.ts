/** What each value of the ground is called, and how it is measured. */
export const terrainFields = {
  bank: {
    side: { label: 'Side', sentence: 'Side of the main line, looking along the recorded direction.' },
    distanceM: { label: 'Distance', sentence: 'Tape from the main line to its foot or its edge.' },
    angleRad: { label: 'Angle', sentence: 'Inclinometer on the face.' },
    heightM: { label: 'Height', sentence: 'Its top above the line; a drop is negative.' },
  },
  ditch: {
    xM: { label: 'Along', sentence: 'Tape along the line from the pin to the middle of the ditch.' },
    widthM: { label: 'Width', sentence: 'Tape from lip to lip, square to the ditch.' },
    depthM: { label: 'Depth', sentence: 'Straight edge over the lips, tape down to the bottom.' },
    skewRad: {
      label: 'Skew',
      sentence: 'Turn of the ditch from square to the line; the left end further ahead is positive.',
    },
  },
  hole: {
    xM: { label: 'Along', sentence: 'Tape along the line from the pin to the middle of the hole.' },
    yM: {
      label: 'Across, left of the line',
      sentence: 'Tape from the main line to the middle of the hole; left is positive.',
    },
    lengthM: { label: 'Length', sentence: 'Tape from rim to rim along the line.' },
    widthM: { label: 'Width', sentence: 'Tape from rim to rim across the line.' },
    depthM: { label: 'Depth', sentence: 'Straight edge over the rims, tape down to the bottom.' },
  },
  hump: {
    xM: { label: 'Along', sentence: 'Tape along the line from the pin to the crest.' },
    lengthM: { label: 'Length', sentence: 'Tape from foot to foot along the line.' },
    heightM: { label: 'Height', sentence: 'Crest above the straight line from foot to foot.' },
    skewRad: {
      label: 'Skew',
      sentence: 'Turn of the crest from square to the line; the left end further ahead is positive.',
    },
  },
  ledge: {
    xM: { label: 'Along', sentence: 'Tape along the line from the pin to the foot of the face.' },
    riseM: { label: 'Rise', sentence: 'Tape from the lower to the upper edge; a drop is negative.' },
    faceRad: { label: 'Face angle', sentence: 'Inclinometer on the face; 85° is as good as upright.' },
    skewRad: {
      label: 'Skew',
      sentence: 'Turn of the edge from square to the line; the left end further ahead is positive.',
    },
  },
  log: {
    xM: { label: 'Along', sentence: 'Tape along the line from the pin to the middle of the log.' },
    diameterM: { label: 'Diameter', sentence: 'Tape over the top from ground to ground, or callipers.' },
    skewRad: {
      label: 'Skew',
      sentence: 'Turn of the log from square to the line; the left end further ahead is positive.',
    },
    fromYM: { label: 'Right end', sentence: 'Tape from the main line; left is positive.' },
    toYM: { label: 'Left end', sentence: 'Tape from the main line; left is positive.' },
  },
  rock: {
    xM: { label: 'Along', sentence: 'Tape along the line from the pin to the middle of the rock.' },
    yM: {
      label: 'Across, left of the line',
      sentence: 'Tape from the main line to the middle of the rock; left is positive.',
    },
    heightM: { label: 'Height', sentence: 'Tape from the ground beside it to its top.' },
    lengthM: { label: 'Length', sentence: 'Tape along the line.' },
    widthM: { label: 'Width', sentence: 'Tape across the line.' },
  },
  rut: {
    centreYM: {
      label: 'Centre, left of the line',
      sentence: 'Tape from the main line to the middle of the rut; left is positive.',
    },
    widthM: { label: 'Width', sentence: 'Tape across the rut from shoulder to shoulder.' },
    depthM: { label: 'Depth', sentence: 'Straight edge across the shoulders, tape down to the bottom.' },
    fromM: { label: 'Starts', sentence: 'Tape along the line from the pin; behind the pin is negative.' },
    toM: { label: 'Ends', sentence: 'Tape along the line from the pin.' },
    runM: {
      label: 'Run-in and run-out',
      sentence: 'Length over which the rut fades to nothing at each end.',
    },
    section: { label: 'Section', sentence: 'U: flat bottom and steep walls. V: walls that meet.' },
  },
  softPatch: {
    fromM: { label: 'Starts', sentence: 'Tape along the line from the pin.' },
    toM: { label: 'Ends', sentence: 'Tape along the line from the pin.' },
    coneIndexPa: {
      label: 'Cone index',
      sentence: 'Cone penetrometer in the top 15 cm (6 in); the mean of at least three.',
    },
    passesBefore: {
      label: 'Passes since then',
      sentence: 'Vehicles that have crossed since it was measured.',
    },
    wetness: { label: 'Wetness', sentence: 'Squeeze a handful: crumbles, holds, drips.' },
  },
  water: {
    fromM: { label: 'Starts', sentence: 'Tape along the line from the pin to the near edge.' },
    toM: { label: 'Ends', sentence: 'Tape along the line from the pin to the far edge.' },
    depthM: {
      label: 'Depth',
      sentence: 'Deepest place on the line, with a pole, by someone it is safe for.',
    },
    flowMps: { label: 'Flow speed', sentence: 'Time a floating stick over a taped distance.' },
  },
  surface: {
    material: { label: 'Ground', sentence: 'What the wheels stand on; where it changes, the slipperiest.' },
    condition: { label: 'Condition', sentence: 'As it will be when the convoy is there; in doubt, wet.' },
  },
  plane: {
    slopeRad: {
      label: 'Slope',
      sentence:
        'Inclinometer on a straight bar along the line; climbing is positive. In degrees, or in percent with % behind it.',
    },
    camberRad: {
      label: 'Camber',
      sentence:
        'Inclinometer on a straight bar across the line; left side high is positive. In degrees, or in percent with % behind it.',
    },
  },
  corridor: {
    leftM: {
      label: 'Room to the left',
      sentence: 'Tape from the main line to what stops a mirror or a wheel on the left.',
    },
    leftBound: { label: 'Left side', sentence: 'What bounds the way on the left.' },
    rightM: {
      label: 'Room to the right',
      sentence: 'Tape from the main line to what stops a mirror or a wheel on the right.',
    },
    rightBound: { label: 'Right side', sentence: 'What bounds the way on the right.' },
    headroomM: { label: 'Headroom', sentence: 'Tape from the ground to the lowest branch or rock above.' },
  },
  stretch: {
    lengthM: { label: 'Length', sentence: 'Tape or pace from where it starts to where it ends.' },
  },
};
