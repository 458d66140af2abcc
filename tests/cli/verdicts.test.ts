import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { readTrip, tripToJson } from '../../src/archive/share.ts';
import { CAUTIONS } from '../../src/brief/cautions.ts';
import { matrixOf } from '../../src/convoy/matrix.ts';
import { placesOn } from '../../src/convoy/places.ts';
import { VERDICT_WORDS } from '../../src/grade/verdict.ts';
import { rutline } from './run.ts';

/** Three obstacles and two vehicles of the demonstration, as a file of their own. */
const whole = readTrip(readFileSync('public/demo/outing.json', 'utf8')).value!;
const trip = { ...whole, obstacles: whole.obstacles.slice(0, 3), vehicles: whole.vehicles.slice(0, 2) };
const file = join(mkdtempSync(join(tmpdir(), 'rutline-')), 'trip.json');
writeFileSync(file, tripToJson(trip));

describe.concurrent('verdicts', () => {
  test('names every vehicle at every obstacle in order of travel, and ends with the cautions', async () => {
    const { code, out, err } = await rutline('verdicts', file, '--reversed');
    expect({ code, err }).toEqual({ code: 0, err: '' });
    const blocks = out.trim().split('\n\n');
    expect(blocks[0]).toContain('travelled reversed');
    expect(blocks.at(-1)).toBe(CAUTIONS.join('\n'));
    const met = blocks.slice(1, -1).map((block) => block.split('\n'));
    const names = trip.obstacles.map(({ name }) => name).toReversed();
    expect(met.map(([title]) => title)).toEqual(names.map((name, i) => `${i + 1}  ${name}`));
    const word = VERDICT_WORDS.join('|');
    for (const [, , ...rows] of met) {
      expect(rows).toHaveLength(2);
      rows.forEach((row, v) => expect(row).toMatch(new RegExp(`^${trip.vehicles[v].name} +(${word})`)));
    }
  });

  test('gives programs the same matrix as the core, in SI', async () => {
    const { out } = await rutline('verdicts', file, '--json');
    const { answer } = JSON.parse(out) as { answer: { cells: unknown[] } };
    const { cells } = matrixOf(placesOn(trip.track, trip.obstacles), trip.vehicles, trip.direction);
    const plain = cells.flat().map(({ obstacleId, vehicleId, verdicts, best }) => ({
      obstacleId,
      vehicleId,
      best: verdicts[best].lineId,
      lines: verdicts.map(({ lineId, verdict }) => ({
        lineId,
        word: verdict.word,
        rung: verdict.rung.name,
        cause: verdict.cause,
        limit: verdict.limit,
        entrySpeedMps: verdict.entrySpeedMps,
        pullN: verdict.pullN,
        engineBraking: verdict.worstChecks.find(({ name }) => name === 'braking')?.engine ?? null,
      })),
    }));
    expect(answer.cells).toEqual(JSON.parse(JSON.stringify(plain)));
  });
});
