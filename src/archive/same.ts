/** Whether two JSON texts say the same, whatever the order of their names. */
export function sameJson(one: string, other: string): boolean {
  return one === other || same(JSON.parse(one), JSON.parse(other));
}

/** Whether two plain records say the same, whatever the order of their names; what is not known is the same as itself. */
export function same(one: unknown, other: unknown): boolean {
  if (Object.is(one, other) || (one === 0 && other === 0)) return true;
  if (typeof one !== 'object' || typeof other !== 'object' || one === null || other === null) return false;
  const names = Object.keys(one);
  return (
    names.length === Object.keys(other).length &&
    names.every(
      (name) =>
        Object.hasOwn(other, name) && same(one[name as keyof typeof one], other[name as keyof typeof other]),
    )
  );
}
