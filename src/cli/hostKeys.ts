import { createHash, randomBytes, timingSafeEqual } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { storeWhole } from './storeWhole.ts';

/** What a key lets its holder do. */
export type May = 'read' | 'write';

/** A key as it is kept: it cannot be had back from this. */
interface KeptKey {
  readonly name: string;
  readonly may: May;
  /** SHA-256 of the key, hexadecimal. A key has 256 random bits, so there is nothing to guess and no salt is needed. */
  readonly hash: string;
  readonly made: string;
}

const FILE = 'keys.json';

/** Makes a key for one leader and keeps its hash; the key itself is told this once. */
export async function newKey(folder: string, name: string, may: May, nowMs: number): Promise<string> {
  const key = randomBytes(32).toString('base64url');
  const made = new Date(nowMs).toISOString().slice(0, 10);
  const keys = [...(await keptKeys(folder)), { name, may, hash: hashOf(key).toString('hex'), made }];
  await storeWhole(folder, FILE, [new TextEncoder().encode(`${JSON.stringify(keys, null, 2)}\n`)]);
  return key;
}

/** What a key may, as `keys.json` says at this moment; null where it is none. Takes as long for a wrong key as for a right one. */
export async function mayOf(folder: string, key: string): Promise<May | null> {
  const hash = hashOf(key);
  let may: May | null = null;
  for (const kept of await keptKeys(folder))
    if (timingSafeEqual(hash, Buffer.from(kept.hash, 'hex'))) may = kept.may;
  return may;
}

/** Throws where the file is there and no list of keys: nobody is let in by a mistake in it. */
async function keptKeys(folder: string): Promise<readonly KeptKey[]> {
  const text = await readFile(join(folder, FILE), 'utf8').catch((error: NodeJS.ErrnoException) => {
    if (error.code === 'ENOENT') return '[]';
    throw error;
  });
  const keys: unknown = JSON.parse(text);
  if (!Array.isArray(keys) || !keys.every(isKept)) throw new Error(`${FILE} is no list of keys`);
  return keys;
}

function isKept(value: unknown): value is KeptKey {
  const { hash, may } = (value ?? {}) as Partial<KeptKey>;
  return typeof hash === 'string' && /^[0-9a-f]{64}$/.test(hash) && (may === 'read' || may === 'write');
}

function hashOf(key: string): Buffer {
  return createHash('sha256').update(key).digest();
}
