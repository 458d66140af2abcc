/** A picture of an obstacle, kept with it. */
export interface Photo {
  readonly id: string;
  /** What it shows, for those who see it and those who do not; may be empty. */
  readonly caption: string;
  /** A whole image file of one of the types that `imageType` knows. Ours are JPEG, written anew from what they show. */
  readonly image: Uint8Array<ArrayBuffer>;
}

export type ImageType = 'image/jpeg' | 'image/png' | 'image/webp';

/**
 * What kind of image a file is, by its first bytes and nothing else; null for everything that is none, markup above all.
 * JPEG: start of image and the first marker (ITU-T T.81, B.1.1.3). PNG: its signature (W3C, PNG, 5.2). WebP: RIFF, four
 * bytes of length, WEBP (RFC 9649, 2.4).
 */
export function imageType(file: Uint8Array): ImageType | null {
  const starts = (at: number, ...bytes: number[]) => bytes.every((byte, i) => file[at + i] === byte);
  if (starts(0, 0xff, 0xd8, 0xff)) return 'image/jpeg';
  if (starts(0, 0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a)) return 'image/png';
  return starts(0, 0x52, 0x49, 0x46, 0x46) && starts(8, 0x57, 0x45, 0x42, 0x50) ? 'image/webp' : null;
}
