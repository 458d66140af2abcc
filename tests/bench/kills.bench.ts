import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build, createServer, preview } from 'vite';
import { clubArchive } from '../e2e/killedArchive.ts';
import { desk } from '../e2e/killedDesk.ts';
import { bareStore } from '../e2e/killedStore.ts';
import type { Kill, Subject } from '../e2e/kills.ts';
import { kills, VICTIMS } from '../e2e/kills.ts';
import type { Table } from './bench.ts';

/** Of each subject. KILLS=n kills n times instead. */
const COUNT = Number(process.env.KILLS ?? 70);

/** The built program, the store by itself and the archive, killed: what the page had said was kept, and what was lost. */
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
    worker: { format: 'es' },
  });
  await served.listen();
  try {
    const origin = served.resolvedUrls!.local[0];
    const subjects = [desk('http://127.0.0.1:4197/'), bareStore(origin), clubArchive(origin)];
    // Each in a browser of its own, all at once: most of the time a browser that was killed is waited for.
    const killed = async (subject: Subject, seed: number): Promise<Kill[]> => {
      const all: Kill[] = [];
      const profile = join(folder, `profile-${seed}`);
      for await (const kill of kills(subject, { folder: profile, count: COUNT, seed })) {
        all.push(kill);
        // Said at once as well: a run that is stopped has not been in vain.
        process.stderr.write(`${subject.name}, kill ${all.length}: ${JSON.stringify(kill)}\n`);
      }
      return all;
    };
    const found = await Promise.all(subjects.map(killed));
    yield* subjects.map((subject, i) => table(subject, found[i]));
  } finally {
    await Promise.all([built.close(), served.close()]);
    rmSync(folder, { recursive: true, force: true });
  }
}

function table({ name, mostMs }: Subject, all: readonly Kill[]): Table {
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
      `SIGKILL at moments drawn from a seed, up to ${mostMs} ms after the first edit, one profile throughout. A process that dies, not a power cut.`,
    ],
  };
}
