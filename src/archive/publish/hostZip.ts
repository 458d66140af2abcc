import { zipSync } from 'fflate';
import type { HostFile } from './publishing.ts';

/** Files for a web host as one zip, not packed again. */
export function hostZip(files: readonly HostFile[]): Blob {
  const whole = files.map(({ name, pieces, size }) => {
    const bytes = new Uint8Array(size);
    pieces.reduce((at, piece) => (bytes.set(piece, at), at + piece.length), 0);
    return [name, bytes] as const;
  });
  return new Blob([zipSync(Object.fromEntries(whole), { level: 0 })], { type: 'application/zip' });
}
