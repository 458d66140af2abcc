import { writeFileSync } from 'node:fs';
import { settled } from '../traverse/against.ts';
import { startEngine } from '../traverse/engine.ts';
import { randomScene } from '../traverse/scenes.ts';

/**
 * Settles random scenes in the rigid-body engine and writes what it weighs, so that the tests need not wait for it:
 * `npx tsx tests/bench/engine.ts [scenes] [file]`. One line a scene: seed, tipped (1 or 0), four loads in newtons, four
 * wheel places x, y in metres.
 */
async function write(scenes: number, file: string): Promise<void> {
  await startEngine();
  const lines: string[] = [];
  for (let seed = 1; seed <= scenes; seed++) {
    const engine = settled(randomScene(seed));
    const places = engine.wheelM.flatMap(({ x, y }) => [x.toFixed(4), y.toFixed(4)]);
    lines.push(
      [seed, engine.tipped ? 1 : 0, ...engine.loadN.map((load) => load.toFixed(0)), ...places].join(' '),
    );
    if (seed % 25 === 0 || seed === scenes) writeFileSync(file, lines.join('\n') + '\n');
  }
}

void write(Number(process.argv[2] ?? 1000), process.argv[3] ?? 'tests/traverse/truth/engine-loads.txt');
