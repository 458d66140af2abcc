/** All that comes of something that is written piece by piece. */
export async function piecesOf<T>(pieces: AsyncIterable<T>): Promise<T[]> {
  const all: T[] = [];
  for await (const piece of pieces) all.push(piece);
  return all;
}
