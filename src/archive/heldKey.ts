import type { Held, Scalar } from './replica.ts';

/** A key of a replica from its parts, of which ids may hold anything. */
export function keyOf(...parts: readonly string[]): string {
  return parts.map(escaped).join('/');
}

/** The parts of a key; null where nobody but `keyOf` could have made it. */
export function partsOf(key: string): string[] | null {
  if (PLAIN_KEY.test(key)) return key.split('/');
  try {
    const parts = key.split('/').map(unescaped);
    return keyOf(...parts) === key ? parts : null;
  } catch {
    return null;
  }
}

/** Letters of which no escape is made and none begins, as in nearly every key. */
const PLAIN_PART = /^[\w. -]*$/;
const PLAIN_KEY = /^[\w. /-]*$/;

/** JSON's escapes keep halves of characters whole, which the replica's engine would not. */
function escaped(part: string): string {
  if (PLAIN_PART.test(part)) return part;
  return JSON.stringify(part).slice(1, -1).replaceAll('%', '%25').replaceAll('/', '%2F');
}

function unescaped(part: string): string {
  return JSON.parse(`"${part.replaceAll('%2F', '/').replaceAll('%25', '%')}"`) as string;
}

/** The keys of a replica as the tree that they spell. */
export class Branch {
  readonly values: Scalar[] = [];
  readonly under = new Map<string, Branch>();

  static of(held: Held): Branch {
    const root = new Branch();
    for (const [key, values] of held) {
      const parts = partsOf(key);
      if (parts === null) continue;
      let branch = root;
      for (const part of parts) branch = branch.#step(part);
      branch.values.push(...values);
    }
    return root;
  }

  #step(part: string): Branch {
    const there = this.under.get(part);
    if (there) return there;
    const made = new Branch();
    this.under.set(part, made);
    return made;
  }

  at(...parts: readonly string[]): Branch | undefined {
    return parts.reduce<Branch | undefined>((branch, part) => branch?.under.get(part), this);
  }

  /** What the first value says, out of JSON; bytes as they are, undefined where there is nothing that can be read. */
  read(...parts: readonly string[]): unknown {
    return plainOf(this.at(...parts)?.values[0]);
  }

  /** Whether something below, or here, has several values. */
  isTorn(
    except: (parts: readonly string[]) => boolean = () => false,
    parts: readonly string[] = [],
  ): boolean {
    if (this.values.length > 1 && !except(parts)) return true;
    return [...this.under].some(([part, branch]) => branch.isTorn(except, [...parts, part]));
  }
}

export function plainOf(value: Scalar | undefined): unknown {
  if (typeof value !== 'string') return value;
  try {
    return JSON.parse(value) as unknown;
  } catch {
    return undefined;
  }
}
