import { imageType } from './photo.ts';

type Bytes = Uint8Array<ArrayBuffer>;

/**
 * A JPEG, PNG or WebP file without what stands in it beside the picture: where, when and by what it was taken, previews,
 * comments. The same array where there is nothing of it; what cannot be followed to its end stays as it is.
 */
export function bareImage(file: Bytes): Bytes {
  switch (imageType(file)) {
    case 'image/jpeg':
      return without(file, 2, jpegSegment);
    case 'image/png':
      return without(file, 8, pngChunk);
    case 'image/webp':
      return bareWebp(file);
    case null:
      return file;
  }
}

/** One piece of a file: where it ends, and whether it goes; null where the rest is the picture itself. */
interface Piece {
  readonly end: number;
  readonly goes: boolean;
}

type PieceAt = (view: DataView, at: number) => Piece | null;

function without(file: Bytes, from: number, pieceAt: PieceAt): Bytes {
  const view = new DataView(file.buffer, file.byteOffset, file.byteLength);
  const stays = [file.subarray(0, from)];
  let at = from;
  for (let piece = pieceAt(view, at); piece !== null; piece = pieceAt(view, at)) {
    if (piece.end <= at || piece.end > file.length) return file;
    if (!piece.goes) stays.push(file.subarray(at, piece.end));
    at = piece.end;
  }
  stays.push(file.subarray(at));
  const length = stays.reduce((sum, part) => sum + part.length, 0);
  if (length === file.length) return file;
  const bare = new Uint8Array(length);
  let to = 0;
  for (const part of stays) {
    bare.set(part, to);
    to += part.length;
  }
  return bare;
}

/**
 * Application segments and comments go (ITU-T T.81, B.2.4.5 and 6), but for JFIF, colour profile and colour transform; so
 * does what follows the end of the image, where cameras put previews and films.
 */
function jpegSegment(view: DataView, at: number): Piece | null {
  if (at + 2 > view.byteLength) return null;
  const marker = view.getUint8(at) === 0xff ? view.getUint8(at + 1) : null;
  const ended = view.getUint16(at - 2) === 0xffd9;
  if (ended && (marker === null || marker === 0xd8)) return { end: view.byteLength, goes: true };
  if (marker === null) return null;
  if (marker === 0xff) return { end: at + 1, goes: true };
  if (marker === 0xd9) return { end: at + 2, goes: false };
  if (at + 4 > view.byteLength || marker < 0xc0) return null;
  const end = at + 2 + view.getUint16(at + 2);
  if (marker === 0xda) return { end: scanEnd(view, end), goes: false };
  const colours = marker === 0xe2 && end <= view.byteLength && fourAt(view, at + 4) === 'ICC_';
  const kept = marker < 0xe0 || marker === 0xe0 || marker === 0xee || colours;
  return { end, goes: !kept && (marker <= 0xef || marker === 0xfe) };
}

/** Where the next marker stands that is no restart: in a scan every other FF is followed by 00 (T.81, B.1.1.5). */
function scanEnd(view: DataView, from: number): number {
  for (let at = from; at + 1 < view.byteLength; at++) {
    if (view.getUint8(at) !== 0xff) continue;
    const next = view.getUint8(at + 1);
    if (next !== 0 && next !== 0xff && (next < 0xd0 || next > 0xd7)) return at;
  }
  return view.byteLength;
}

const PNG_TELLS = ['eXIf', 'tEXt', 'zTXt', 'iTXt', 'tIME'];

/** PNG, 3rd ed., W3C, 5.3: length, type, data, check. */
function pngChunk(view: DataView, at: number): Piece | null {
  if (at + 12 > view.byteLength) return null;
  return { end: at + 12 + view.getUint32(at), goes: PNG_TELLS.includes(fourAt(view, at + 4)) };
}

/** RFC 9649, 2.3 and 2.7: chunks of even length; the header counts all bytes and flags what is there. */
function bareWebp(file: Bytes): Bytes {
  const bare = without(file, 12, (view, at) => {
    if (at + 8 > view.byteLength) return null;
    const length = view.getUint32(at + 4, true);
    return { end: at + 8 + length + (length % 2), goes: ['EXIF', 'XMP '].includes(fourAt(view, at)) };
  });
  if (bare === file) return file;
  const view = new DataView(bare.buffer, bare.byteOffset, bare.byteLength);
  view.setUint32(4, bare.length - 8, true);
  const [exif, xmp] = [0x08, 0x04];
  if (fourAt(view, 12) === 'VP8X') view.setUint8(20, view.getUint8(20) & ~(exif | xmp));
  return bare;
}

function fourAt(view: DataView, at: number): string {
  return String.fromCharCode(...[0, 1, 2, 3].map((i) => view.getUint8(at + i)));
}
