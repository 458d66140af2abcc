import { openSync, writeSync } from 'node:fs';
import { cpuUsage } from 'node:process';
import { faultOf, formats, mutant } from '../archive/mutants.ts';

/** Reads one mutant after the other of those from `from` on, every `step`th, and keeps a file of where it is. */
const [, , from, to, step, file] = process.argv;
const place = openSync(file, 'w');
// SQLite says on the console what it made of a statement; here it is asked a hundred thousand times.
console.warn = console.error = () => {};

const kinds = await formats();
let slowest = { ms: 0, what: '' };

for (let number = Number(from); number < Number(to); number += Number(step)) {
  const format = kinds[number % kinds.length];
  writeSync(place, String(number).padEnd(12), 0);
  const before = cpuUsage();
  let fault: string | null;
  try {
    fault = faultOf(await format.read(mutant(format, number)));
  } catch (error) {
    fault = error instanceof Error ? (error.stack ?? error.message) : String(error);
  }
  const { user, system } = cpuUsage(before);
  const ms = (user + system) / 1_000;
  if (ms > slowest.ms) slowest = { ms, what: `${format.name} ${number}` };
  if (fault !== null) process.stdout.write(`${JSON.stringify({ number, name: format.name, fault })}\n`);
}
process.stdout.write(`${JSON.stringify({ slowest })}\n`);
