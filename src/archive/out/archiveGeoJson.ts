import type { Feature } from 'geojson';
import { asTrip } from '../filed.ts';
import { gradedRecord } from '../gradedRecord.ts';
import type { GradedTrack } from '../gradedTrack.ts';
import { recordToJson } from '../share.ts';
import { contentsOf } from './contents.ts';
import { placeFeature, wayFeature } from './geoJson.ts';

/**
 * Graded tracks as one GeoJSON text (RFC 7946), in pieces to be put together. Each track is a feature, in place of its
 * recording, with its whole record among the properties; its obstacles and lines follow, as others want to see them.
 */
export async function* archiveGeoJson(
  tracks: Iterable<GradedTrack> | AsyncIterable<GradedTrack>,
): AsyncGenerator<string> {
  yield '{"type":"FeatureCollection","features":[';
  let between = '\n';
  for await (const graded of tracks) {
    const { places, ways } = contentsOf(asTrip(graded), 'metric');
    const recording = graded.track === null ? undefined : ways.find(({ kind }) => kind in RECORDED);
    const others = [...places.map(placeFeature), ...ways.filter((way) => way !== recording).map(wayFeature)];
    const { id, name, area, note } = graded;
    const geometry = recording === undefined ? null : wayFeature(recording).geometry;
    const said = JSON.stringify({ track_id: id, kind: 'track', name, area, note });
    yield `${between}{"type":"Feature","geometry":${JSON.stringify(geometry)},"properties":${said.slice(0, -1)},"record":${recordToJson(gradedRecord(graded)).trimEnd()}}}`;
    between = ',\n';
    for (const feature of others) yield between + JSON.stringify(ofTrack(feature, id));
  }
  yield '\n]}\n';
}

const RECORDED = { track: true, route: true };

function ofTrack(feature: Feature, id: string): Feature {
  return { ...feature, properties: { track_id: id, ...feature.properties } };
}
