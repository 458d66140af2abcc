import { HEAD_BYTES, imageSize } from '../terrain/imageSize.ts';

/** A photo to be made ready for keeping. */
export interface PhotoTask {
  readonly file: Blob;
  /** The longer side is scaled down to this. */
  readonly mostPx: number;
  readonly mostBytes: number;
}

/** The photo as JPEG, or why there is none. */
export type PhotoAnswer =
  | { readonly image: Uint8Array<ArrayBuffer>; readonly fault: null }
  | { readonly image: null; readonly fault: 'no image' | 'too many pixels' | 'too large' | 'not able' };

/** Drawn, a pixel takes four bytes: what the largest cameras write at their usual setting, and half a gigabyte. */
const MOST_PIXELS = 120_000_000;

/** Tried in turn until the image is small enough. */
const QUALITIES = [0.82, 0.65, 0.45];

/**
 * Draws a photo anew, upright and no larger than asked, and writes it as JPEG. Only what it shows goes into the file: where
 * and when it was taken, and by what, does not.
 */
export async function redrawn({ file, mostPx, mostBytes }: PhotoTask): Promise<PhotoAnswer> {
  if (typeof OffscreenCanvas === 'undefined') return { image: null, fault: 'not able' };
  const head = imageSize(new Uint8Array(await file.slice(0, HEAD_BYTES).arrayBuffer()));
  if (head === null) return { image: null, fault: 'no image' };
  if (head.widthPx * head.heightPx > MOST_PIXELS) return { image: null, fault: 'too many pixels' };
  let drawn: ImageBitmap;
  try {
    drawn = await createImageBitmap(file, { imageOrientation: 'from-image' });
  } catch {
    return { image: null, fault: 'no image' };
  }
  const by = Math.min(1, mostPx / Math.max(drawn.width, drawn.height));
  const width = Math.max(1, Math.round(drawn.width * by));
  const height = Math.max(1, Math.round(drawn.height * by));
  const canvas = new OffscreenCanvas(width, height);
  const pen = canvas.getContext('2d');
  if (pen === null) return { image: null, fault: 'no image' };
  pen.fillStyle = '#ffffff';
  pen.fillRect(0, 0, width, height);
  pen.imageSmoothingQuality = 'high';
  pen.drawImage(drawn, 0, 0, width, height);
  drawn.close();
  for (const quality of QUALITIES) {
    const jpeg = await canvas.convertToBlob({ type: 'image/jpeg', quality });
    if (jpeg.size <= mostBytes) return { image: new Uint8Array(await jpeg.arrayBuffer()), fault: null };
  }
  return { image: null, fault: 'too large' };
}
