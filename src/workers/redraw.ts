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
  | { readonly image: null; readonly fault: 'no image' | 'too large' | 'not able' };

/** Tried in turn until the image is small enough. */
const QUALITIES = [0.82, 0.65, 0.45];

/**
 * Draws a photo anew, upright and no larger than asked, and writes it as JPEG. Only what it shows goes into the file: where
 * and when it was taken, and by what, does not.
 */
export async function redrawn({ file, mostPx, mostBytes }: PhotoTask): Promise<PhotoAnswer> {
  if (typeof OffscreenCanvas === 'undefined') return { image: null, fault: 'not able' };
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
