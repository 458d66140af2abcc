import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex } from '@noble/hashes/utils.js';

/** What tells bytes from any others: the first 128 bits of their SHA-256 (FIPS 180-4), in hexadecimal. */
export function hashOf(pieces: readonly Uint8Array[]): string {
  const hash = sha256.create();
  pieces.forEach((piece) => hash.update(piece));
  return bytesToHex(hash.digest().subarray(0, 16));
}
