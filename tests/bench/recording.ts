/** A seeded stream of numbers in [0, 1): the minimal standard generator of Park and Miller, CACM 31 (1988). */
function random(seed: number): () => number {
  let state = seed;
  return () => (state = (state * 16_807) % 2_147_483_647) / 2_147_483_647;
}

/** The text, in pieces, of a made-up recording at one point a second, in the layout of common receivers. */
export function* recordingText(points: number, extensions: boolean): Generator<string> {
  const next = random(7);
  let lng = 11.5;
  let lat = 37.2;
  let elevationM = 840;
  let heading = 1;
  yield '<?xml version="1.0" encoding="UTF-8"?>\n<gpx version="1.1" creator="bench" xmlns="http://www.topografix.com/GPX/1/1" xmlns:m="http://example.org/more">\n';
  yield '  <trk>\n    <name>Made up</name>\n    <trkseg>\n';
  for (let i = 0; i < points; i++) {
    heading += (next() - 0.5) * 0.3;
    lng += Math.sin(heading) * 4e-5;
    lat += Math.cos(heading) * 4e-5;
    elevationM += (next() - 0.5) * 1.2;
    const time = new Date(1_600_000_000_000 + i * 1000).toISOString().replace('.000', '');
    const more = extensions
      ? `\n        <extensions>\n          <m:TrackPointExtension>\n            <m:atemp>21.0</m:atemp>\n            <m:speed>${(next() * 9).toFixed(2)}</m:speed>\n            <m:course>${(next() * 360).toFixed(1)}</m:course>\n          </m:TrackPointExtension>\n        </extensions>`
      : '';
    yield `      <trkpt lat="${lat.toFixed(7)}" lon="${lng.toFixed(7)}">\n        <ele>${elevationM.toFixed(1)}</ele>\n        <time>${time}</time>${more}\n      </trkpt>\n`;
  }
  yield '    </trkseg>\n  </trk>\n</gpx>\n';
}
