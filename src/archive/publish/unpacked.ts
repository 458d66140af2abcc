/** Unpacks gzip (RFC 1952), its check sum compared; rejects where it is damaged or holds more than `mostBytes`. */
export async function unpacked(packed: BlobPart, mostBytes: number): Promise<Uint8Array<ArrayBuffer>> {
  const reader = new Blob([packed]).stream().pipeThrough(new DecompressionStream('gzip')).getReader();
  const pieces: Uint8Array[] = [];
  let size = 0;
  for (let read = await reader.read(); !read.done; read = await reader.read()) {
    size += read.value.length;
    if (size > mostBytes) {
      await reader.cancel();
      throw new RangeError('too large');
    }
    pieces.push(read.value);
  }
  const whole = new Uint8Array(size);
  pieces.reduce((at, piece) => (whole.set(piece, at), at + piece.length), 0);
  return whole;
}
