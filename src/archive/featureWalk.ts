import { JSONParser } from '@streamparser/json';

/** How a walk through a collection of features ended. */
export type FeatureWalk = 'all' | 'no JSON' | 'no collection' | 'too large a feature';

/** Bytes of the file that are looked at together. */
const PIECE_BYTES = 128 * 1024;
const BYTE_ORDER_MARK = [0xef, 0xbb, 0xbf];

/**
 * Hands over the features of a GeoJSON file (RFC 7946) one after the other, without holding the file: only one feature, of
 * up to about `mostBytes` of text, and a piece of the file. Ends at the first fault; what came before it was handed over.
 */
export async function walkFeatures(
  file: Blob,
  mostBytes: number,
  onFeature: (feature: unknown, i: number) => void | Promise<void>,
  onProgress: (share: number) => void = () => {},
): Promise<FeatureWalk> {
  let type: unknown;
  let isFaulty = false;
  let come: unknown[] = [];
  const parser = new JSONParser({ paths: ['$.type', '$.features.*'], keepStack: false });
  parser.onValue = ({ value, key }) => {
    if (typeof key === 'number') come.push(value);
    else if (key === 'type') type = value;
  };
  parser.onError = () => (isFaulty = true);
  let count = 0;
  let sinceBytes = 0;
  for (let at = await beginning(file); at < file.size; at += PIECE_BYTES) {
    const piece = new Uint8Array(await file.slice(at, at + PIECE_BYTES).arrayBuffer());
    parser.write(piece);
    sinceBytes = come.length > 0 ? 0 : sinceBytes + piece.length;
    for (const feature of come) await onFeature(feature, count++);
    come = [];
    if (isFaulty) return 'no JSON';
    if (sinceBytes > mostBytes) return 'too large a feature';
    onProgress(Math.min(1, (at + PIECE_BYTES) / file.size));
  }
  if (!parser.isEnded) return 'no JSON';
  return type === 'FeatureCollection' ? 'all' : 'no collection';
}

/** Past a byte order mark. */
async function beginning(file: Blob): Promise<number> {
  const start = new Uint8Array(await file.slice(0, BYTE_ORDER_MARK.length).arrayBuffer());
  return BYTE_ORDER_MARK.every((byte, i) => start[i] === byte) ? BYTE_ORDER_MARK.length : 0;
}
