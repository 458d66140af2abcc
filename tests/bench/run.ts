import { cpus, totalmem } from 'node:os';
import type { Bench, Table } from './bench.ts';

/** `npm run bench [name]` runs all of these, or those whose name contains the word. */
const BENCHES: Record<string, () => Promise<Bench>> = {
  import: async () => (await import('./import.bench.ts')).importBench,
  traverse: async () => (await import('./traverse.bench.ts')).traverseBench,
  day: async () => (await import('./day.bench.ts')).dayBench,
  engine: async () => (await import('./engine.bench.ts')).engineBench,
  'import-browser': async () => (await import('./import-browser.bench.ts')).importBrowserBench,
  drag: async () => (await import('./drag.bench.ts')).dragBench,
  archive: async () => (await import('./archive.bench.ts')).archiveBench,
  fuzz: async () => (await import('./fuzz.bench.ts')).fuzzBench,
  federation: async () => (await import('./federation.bench.ts')).federationBench,
  kills: async () => (await import('./kills.bench.ts')).killsBench,
};

function markdown({ title, columns, rows, notes }: Table): string {
  const line = (cells: readonly string[]) => `| ${cells.join(' | ')} |`;
  const body = [line(columns), line(columns.map(() => '---')), ...rows.map(line)].join('\n');
  return [`\n### ${title}\n`, body, ...notes.map((note) => `\n${note}`)].join('\n');
}

const word = process.argv[2] ?? '';
const names = Object.keys(BENCHES).filter((name) => name.includes(word));
if (names.length === 0)
  console.error(`No benchmark is called "${word}". There are: ${Object.keys(BENCHES).join(', ')}`);
const [cpu] = cpus();
const machine = `${cpu?.model ?? 'unknown processor'}, ${cpus().length} cores, ${Math.round(totalmem() / 2 ** 30)} GiB`;
console.log(`${machine}; Node ${process.version}; ${new Date().toISOString().slice(0, 10)}`);
for (const name of names) {
  const bench = await BENCHES[name]();
  for await (const table of bench()) console.log(markdown(table));
}
process.exitCode = names.length === 0 ? 1 : 0;
