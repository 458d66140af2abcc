import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { expect } from 'vitest';

/** Compares a text with the file that holds it; `npm run golden` writes the file instead. */
export function expectGolden(path: string, text: string): void {
  if (process.env.GOLDEN === 'write') writeFileSync(path, text);
  expect(existsSync(path), `${path} is missing: npm run golden`).toBe(true);
  expect(text, `${path} differs: look at what changed, then npm run golden`).toBe(readFileSync(path, 'utf8'));
}
