import { mkdir, readFile } from 'node:fs/promises';
import { parseArgs } from 'node:util';
import { copiesFrom, isCopies } from '../archive/exchange.ts';
import type { GradedTrack } from '../archive/gradedTrack.ts';
import { gradedOf } from '../archive/gradedReplica.ts';
import { Publishing } from '../archive/publish/publishing.ts';
import { free, startReplicas } from '../archive/replica.ts';
import type { Reading } from '../problem.ts';
import { problemText } from '../problem.ts';
import { engineBytes } from './engine.ts';
import { storeWhole } from './storeWhole.ts';

/** As it stands in the list of commands. */
export const PUBLISH_USAGE = [
  '  publish ARCHIVE --out DIR',
  '                        Writes the tracks of a .rutline-tracks or .gpkg file, without people, as files for any web host.',
];

/** Writes the records first, under a name of their own, and then the index that names them: readers never see half of it. */
export async function publish(args: readonly string[]): Promise<number> {
  const options = optionsFrom(args);
  if (typeof options === 'string') {
    console.error(options);
    return 2;
  }
  try {
    const { value: tracks, problems } = await tracksIn(await readFile(options.file));
    for (const problem of problems) console.error(problemText(problem));
    if (tracks === null) return 1;
    const publishing = new Publishing();
    tracks.forEach((track) => publishing.add(track));
    const { records, index, trackCount, nowhere } = publishing.files();
    for (const name of nowhere) console.error(`${name}: has no place, and is left out.`);
    await mkdir(options.out, { recursive: true });
    for (const { name, pieces } of [records, index]) await storeWhole(options.out, name, pieces, 0o644);
    const told = [index, records].map(({ name, size }) => `${name} (${size} bytes)`);
    console.log(`${trackCount} tracks: ${told.join(', ')}`);
    return problems.some(({ severity }) => severity === 'error') ? 1 : 0;
  } catch (error) {
    console.error(`${options.file} cannot be published: ${String(error)}`);
    return 1;
  }
}

async function tracksIn(bytes: Uint8Array): Promise<Reading<readonly GradedTrack[]>> {
  if (!isCopies(bytes)) {
    const { readGeoPackage } = await import('../archive/geopackage/read.ts');
    const { value, problems } = await readGeoPackage(bytes);
    return { value: value?.tracks ?? null, problems };
  }
  await startReplicas(engineBytes);
  const { value, problems } = copiesFrom(bytes);
  const readings = (value ?? []).map(({ replica }) => {
    const reading = gradedOf(replica);
    free(replica);
    return reading;
  });
  return {
    value: value && readings.flatMap((reading) => reading.value ?? []),
    problems: [...problems, ...readings.flatMap((reading) => reading.problems)],
  };
}

function optionsFrom(args: readonly string[]): { readonly file: string; readonly out: string } | string {
  try {
    const { values, positionals } = parseArgs({
      args: [...args],
      allowPositionals: true,
      options: { out: { type: 'string' } },
    });
    if (positionals.length !== 1) return 'Name one file.';
    if (values.out === undefined) return 'Say which folder to write to: --out DIR.';
    return { file: positionals[0], out: values.out };
  } catch (error) {
    return error instanceof Error ? error.message : String(error);
  }
}
