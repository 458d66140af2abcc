/** How many pixels an image has, as its first bytes say. */
export interface ImageSize {
  readonly widthPx: number;
  readonly heightPx: number;
}

/** Bytes of a file within which its size is looked for: room for the largest preview and colour profile before it. */
export const HEAD_BYTES = 2 ** 20;

/**
 * The size that a file claims, told without drawing it; null where it is no image of a kind that is known here. A small
 * file can claim more pixels than a device has memory for.
 */
export function imageSize(file: Uint8Array): ImageSize | null {
  if (file.length < 26) return null;
  const view = new DataView(file.buffer, file.byteOffset, file.byteLength);
  const size =
    jpegSize(view) ?? pngSize(view) ?? webpSize(view) ?? gifSize(view) ?? bmpSize(view) ?? boxedSize(view);
  return size !== null && size.widthPx > 0 && size.heightPx > 0 ? size : null;
}

/** The start of a frame (ITU-T T.81, 1992, B.2.2), behind segments and strays that are passed over, as readers do. */
function jpegSize(view: DataView): ImageSize | null {
  if (view.getUint16(0) !== 0xffd8) return null;
  for (let at = 2; at + 9 <= view.byteLength;) {
    const [fill, marker] = [view.getUint8(at), view.getUint8(at + 1)];
    if (fill !== 0xff) {
      at++;
      continue;
    }
    const frame = marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker);
    if (frame) return { widthPx: view.getUint16(at + 7), heightPx: view.getUint16(at + 5) };
    const bare = marker === 0xff || marker === 0x01 || (marker >= 0xd0 && marker <= 0xd8);
    at += marker === 0xff ? 1 : bare ? 2 : 2 + view.getUint16(at + 2);
  }
  return null;
}

/** The first chunk (PNG, 3rd ed., W3C, 11.2.1). */
function pngSize(view: DataView): ImageSize | null {
  if (view.getUint32(0) !== 0x89504e47 || view.getUint32(4) !== 0x0d0a1a0a || !says(view, 12, 'IHDR'))
    return null;
  return { widthPx: view.getUint32(16), heightPx: view.getUint32(20) };
}

/** VP8, VP8L or VP8X (RFC 9649, 2.5 to 2.7; RFC 6386, 9.1). */
function webpSize(view: DataView): ImageSize | null {
  if (!says(view, 0, 'RIFF') || !says(view, 8, 'WEBP') || view.byteLength < 30) return null;
  if (says(view, 12, 'VP8 '))
    return { widthPx: view.getUint16(26, true) & 0x3fff, heightPx: view.getUint16(28, true) & 0x3fff };
  if (says(view, 12, 'VP8L')) {
    const bits = view.getUint32(21, true);
    return { widthPx: (bits & 0x3fff) + 1, heightPx: ((bits >>> 14) & 0x3fff) + 1 };
  }
  const threeBytes = (at: number) => view.getUint16(at, true) + view.getUint8(at + 2) * 0x10000;
  return says(view, 12, 'VP8X') ? { widthPx: threeBytes(24) + 1, heightPx: threeBytes(27) + 1 } : null;
}

/** The logical screen (GIF89a, 1990, 18). */
function gifSize(view: DataView): ImageSize | null {
  if (!says(view, 0, 'GIF8')) return null;
  return { widthPx: view.getUint16(6, true), heightPx: view.getUint16(8, true) };
}

/** The header of 40 bytes or more, from memory: signed width and height, the latter negative from the top down. */
function bmpSize(view: DataView): ImageSize | null {
  if (!says(view, 0, 'BM') || view.getUint32(14, true) < 40) return null;
  return {
    widthPx: Math.abs(view.getInt32(18, true)),
    heightPx: Math.abs(view.getInt32(22, true)),
  };
}

/** AVIF and HEIC: the largest of the sizes that its items claim, `ispe` (ISO/IEC 23008-12, 6.5.3). */
function boxedSize(view: DataView): ImageSize | null {
  if (!says(view, 4, 'ftyp')) return null;
  let largest: ImageSize | null = null;
  for (let at = 8; at + 16 <= view.byteLength; at++) {
    if (view.getUint8(at) !== 0x69 || !says(view, at, 'ispe')) continue;
    const size = { widthPx: view.getUint32(at + 8), heightPx: view.getUint32(at + 12) };
    if (largest === null || size.widthPx * size.heightPx > largest.widthPx * largest.heightPx) largest = size;
  }
  return largest;
}

function says(view: DataView, at: number, letters: string): boolean {
  if (at + letters.length > view.byteLength) return false;
  for (let i = 0; i < letters.length; i++) if (view.getUint8(at + i) !== letters.charCodeAt(i)) return false;
  return true;
}
