import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build, preview } from 'vite';
import type { TestProject } from 'vitest/node';

declare module 'vitest' {
  export interface ProvidedContext {
    /** Address of the built program, ending in a slash. */
    url: string;
    /** Folder of the built program. */
    dist: string;
  }
}

/** Builds the program as it is delivered and serves it on a free port for the browser tests. */
export default async function serve(project: TestProject): Promise<() => Promise<void>> {
  const outDir = mkdtempSync(join(tmpdir(), 'rutline-'));
  // The test runner's own would give a build for development.
  const { NODE_ENV } = process.env;
  process.env.NODE_ENV = 'production';
  await build({ mode: 'production', logLevel: 'warn', build: { outDir, emptyOutDir: true } });
  process.env.NODE_ENV = NODE_ENV;
  const server = await preview({
    logLevel: 'warn',
    build: { outDir },
    preview: { host: '127.0.0.1', port: 0, strictPort: false },
  });
  const address = server.httpServer.address();
  if (address === null || typeof address === 'string') throw new Error('The preview server gave no port.');
  project.provide('url', `http://127.0.0.1:${address.port}/`);
  project.provide('dist', outDir);
  return async () => {
    await server.close();
    rmSync(outDir, { recursive: true, force: true });
  };
}
