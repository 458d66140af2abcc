/** Bytes taken at a time: as many arguments as every engine lets a function have. */
const PIECE = 0x8000;

/** Bytes as text (RFC 4648, section 4). */
export function toBase64(bytes: Uint8Array): string {
  let binary = '';
  for (let i = 0; i < bytes.length; i += PIECE)
    binary += String.fromCharCode(...bytes.subarray(i, i + PIECE));
  return btoa(binary);
}

/** The bytes of a text in base64, or null where it is none. */
export function fromBase64(text: string): Uint8Array<ArrayBuffer> | null {
  if (text.length % 4 !== 0 || !/^[A-Za-z0-9+/]*={0,2}$/.test(text)) return null;
  const binary = atob(text);
  const bytes = new Uint8Array(binary.length);
  for (let i = 0; i < bytes.length; i++) bytes[i] = binary.charCodeAt(i);
  return bytes;
}
