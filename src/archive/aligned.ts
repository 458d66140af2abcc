type Row = ReadonlyMap<string, unknown>;

/**
 * Which of `before` each of `after` is, or null where it is new: the pairing, in the order of both, from which the fewest
 * fields differ. Only rows of one kind are ever the same thing.
 */
export function aligned(before: readonly Row[], after: readonly Row[]): (number | null)[] {
  const least = Array.from({ length: before.length + 1 }, () => new Float64Array(after.length + 1));
  for (let i = before.length; i >= 0; i--)
    for (let j = after.length; j >= 0; j--) {
      if (i === before.length && j === after.length) continue;
      least[i][j] = Math.min(
        i < before.length ? least[i + 1][j] + weight(before[i]) : Infinity,
        j < after.length ? least[i][j + 1] + weight(after[j]) : Infinity,
        i < before.length && j < after.length ? least[i + 1][j + 1] + apart(before[i], after[j]) : Infinity,
      );
    }
  const pairs: (number | null)[] = [];
  let i = 0;
  while (pairs.length < after.length) {
    const j = pairs.length;
    if (i < before.length && least[i][j] === least[i + 1][j + 1] + apart(before[i], after[j]))
      pairs.push(i++);
    else if (i < before.length && least[i][j] === least[i + 1][j] + weight(before[i])) i++;
    else pairs.push(null);
  }
  return pairs;
}

function weight(row: Row): number {
  return row.size + 1;
}

function apart(one: Row, other: Row): number {
  if (one.get('kind') !== other.get('kind')) return Infinity;
  let fields = 0;
  for (const [name, value] of other) if (one.get(name) !== value) fields++;
  return fields;
}

/** A rising number for each of a list; those that have one keep it as long as it rises, and new ones come between. */
export function orders(known: readonly (number | null)[]): number[] {
  const given: number[] = [];
  known.forEach((order, i) => {
    const last = given.at(-1) ?? -1;
    if (order !== null && order > last) return given.push(order);
    const next = known.slice(i + 1).find((later) => later !== null && later > last);
    return given.push(next == null ? Math.floor(last) + 1 : (last + next) / 2);
  });
  return given;
}
