import { mkdtempSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'vite';
import type { TestProject } from 'vitest/node';

declare module 'vitest' {
  export interface ProvidedContext {
    /** Path of the command line as one program. */
    cli: string;
  }
}

const PACKAGES = fileURLToPath(new URL('../../node_modules', import.meta.url));

/** Puts the command line together once, since every run from its sources would translate them again. */
export default async function bundle(project: TestProject): Promise<() => void> {
  // Where it lies, its packages are found.
  const outDir = mkdtempSync(join(PACKAGES, '.rutline-cli-'));
  await build({
    configFile: false,
    logLevel: 'warn',
    publicDir: false,
    build: { ssr: 'src/cli/rutline.ts', outDir, target: 'node20', minify: false },
  });
  project.provide('cli', join(outDir, 'rutline.js'));
  return () => rmSync(outDir, { recursive: true, force: true });
}
