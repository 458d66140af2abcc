/** A name that nothing else has, for a trip, an obstacle, a vehicle or a line. Works without a secure context. */
export function newId(): string {
  const random = crypto.getRandomValues(new Uint32Array(2));
  return Date.now().toString(36) + Array.from(random, (part) => part.toString(36)).join('');
}
