/** What a trip file adds to ground and vehicle. */
export const tripFields = {
  direction: { label: 'Direction', sentence: 'Which way the convoy travels the recorded track.' },
  kind: { label: 'Kind', sentence: 'A track was recorded, a route was planned.' },
  lng: { label: 'Longitude', sentence: 'WGS 84 degrees, east positive.' },
  lat: { label: 'Latitude', sentence: 'WGS 84 degrees, north positive.' },
  elevationM: { label: 'Elevation', sentence: 'Above mean sea level; null where unknown.' },
  nodeM: { label: 'Between nodes', sentence: 'How far the nodes of the elevation model stand apart.' },
  errorM: {
    label: 'Vertical error',
    sentence:
      'Of the elevation model, as its publisher states it: one standard deviation or root mean square.',
  },
  isUsed: {
    label: 'In use',
    sentence: 'Whether slopes are read off the elevation model, not off the recording.',
  },
  camberRad: {
    label: 'Cross slope',
    sentence: 'Of the hillside, left side high positive; null where unknown.',
  },
  stationM: { label: 'Station', sentence: 'Along the track from its first point; gaps add nothing.' },
  offsetM: { label: 'Offset', sentence: 'Tape sideways from the main line; left is positive.' },
};
