/** Directories of a file that are looked at: the picture and its overviews. */
const MOST_DIRECTORIES = 16;

/** Entries of one directory; a picture of heights has some 20. */
const MOST_ENTRIES = 200;

/** Bytes of one value, by the type of its field (TIFF 6.0, page 15; BigTIFF: 16 to 18). */
const SIZES: Readonly<Record<number, number>> = {
  1: 1,
  2: 1,
  3: 2,
  4: 4,
  5: 8,
  6: 1,
  7: 1,
  8: 2,
  9: 4,
  10: 8,
  11: 4,
  12: 8,
  13: 4,
  16: 8,
  17: 8,
  18: 8,
};

/**
 * How many directories a TIFF file has, or null where it is none, or what its tags say of themselves cannot be: values
 * beyond its end, directories in a circle. To be asked before a library makes room for what tags say they hold.
 */
export async function directoriesOf(file: Blob): Promise<number | null> {
  const slice = async (from: number, length: number) =>
    new DataView(await partOf(file, from, length).arrayBuffer());
  try {
    const head = await slice(0, 16);
    const order = head.getUint16(0);
    if (order !== 0x4949 && order !== 0x4d4d) return null;
    const little = order === 0x4949;
    const version = head.getUint16(2, little);
    if (version !== 42 && version !== 43) return null;
    const big = version === 43;
    const offsetAt = (view: DataView, at: number) =>
      big ? Number(view.getBigUint64(at, little)) : view.getUint32(at, little);
    const [countSize, entrySize, offsetSize] = big ? [8, 20, 8] : [2, 12, 4];
    let next = offsetAt(head, big ? 8 : 4);
    let count = 0;
    for (const seen = new Set<number>(); next !== 0 && count < MOST_DIRECTORIES; count++) {
      if (seen.has(next)) return null;
      seen.add(next);
      const start = await slice(next, countSize);
      const entries = big ? Number(start.getBigUint64(0, little)) : start.getUint16(0, little);
      if (entries > MOST_ENTRIES) return null;
      const view = await slice(next + countSize, entries * entrySize + offsetSize);
      for (let i = 0; i < entries; i++) {
        const at = i * entrySize;
        const size = SIZES[view.getUint16(at + 2, little)];
        const length = size * offsetAt(view, at + 4);
        if (!(length <= offsetSize || offsetAt(view, at + entrySize - offsetSize) + length <= file.size))
          return null;
      }
      next = offsetAt(view, entries * entrySize);
    }
    return count > 0 ? count : null;
  } catch (error) {
    if (error instanceof RangeError) return null;
    throw error;
  }
}

/** Bytes of a file as far as it has them. A place that is none, or part of a byte, is a RangeError: Node would end at it. */
export function partOf(file: Blob, from: number, length: number): Blob {
  const to = Math.min(from + length, file.size);
  if (!(Number.isInteger(from) && Number.isInteger(to) && 0 <= from && from <= to)) throw new RangeError();
  return file.slice(from, to);
}
