/** What a trip file adds to ground and vehicle. */
export const tripFields = {
  direction: { label: 'Direction', sentence: 'Which way the convoy travels the recorded track.' },
  kind: { label: 'Kind', sentence: 'A track was recorded, a route was planned.' },
  lng: { label: 'Longitude', sentence: 'WGS 84 degrees, east positive.' },
  lat: { label: 'Latitude', sentence: 'WGS 84 degrees, north positive.' },
  elevationM: { label: 'Elevation', sentence: 'Above mean sea level; null where unknown.' },
  stationM: { label: 'Station', sentence: 'Along the track from its first point; gaps add nothing.' },
  offsetM: { label: 'Offset', sentence: 'Tape sideways from the main line; left is positive.' },
};
