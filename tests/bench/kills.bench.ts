import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build, createServer, preview } from 'vite';
import { desk } from '../e2e/killedDesk.ts';
import { bareStore } from '../e2e/killedStore.ts';
import type { Kill, Subject } from '../e2e/kills.ts';
import { kills, VICTIMS } from '../e2e/kills.ts';
import type { Table } from './bench.ts';

/** 100 kills of each subject, the built program and the store by itself: what the page had said was kept, and what was lost. */
export async function* killsBench(): AsyncGenerator<Table> {
  const folder = mkdtempSync(join(tmpdir(), 'rutline-bench-'));
  const outDir = join(folder, 'dist');
  await build({ logLevel: 'error', mode: 'production', build: { outDir, emptyOutDir: true } });
  const built = await preview({
    logLevel: 'error',
    build: { outDir },
    preview: { port: 4197, host: '127.0.0.1' },
  });
  const served = await createServer({
    configFile: false,
    logLevel: 'error',
    server: { port: 0, host: '127.0.0.1', hmr: false },
    optimizeDeps: { noDiscovery: true },
  });
  await served.listen();
  try {
    const subjects = [desk('http://127.0.0.1:4197/'), bareStore(served.resolvedUrls!.local[0])];
    for (const [seed, subject] of subjects.entries()) {
      const profile = join(folder, `profile-${seed}`);
      const all: Kill[] = [];
      for await (const kill of kills(subject, { folder: profile, count: 100, seed })) all.push(kill);
      yield table(subject, all);
    }
  } finally {
    await Promise.all([built.close(), served.close()]);
    rmSync(folder, { recursive: true, force: true });
  }
}

function table({ name }: Subject, all: readonly Kill[]): Table {
  const sum = (some: readonly Kill[], of: (kill: Kill) => number) =>
    String(some.reduce((total, kill) => total + of(kill), 0));
  const rows = [...VICTIMS, null].map((victim) => {
    const some = victim === null ? all : all.filter((kill) => kill.victim === victim);
    return [
      victim ?? 'together',
      String(some.length),
      sum(some, ({ midway }) => Number(midway)),
      sum(some, ({ kept }) => kept),
      sum(some, ({ lost }) => lost.length),
    ];
  });
  return {
    title: `Killed while saving: ${name}`,
    columns: ['killed', 'kills', 'of them within a saving', 'edits that the page said were kept', 'lost'],
    rows,
    notes: [
      'SIGKILL at moments drawn from a seed, up to 120 ms after the first edit, one profile throughout. A process that dies, not a power cut.',
    ],
  };
}
