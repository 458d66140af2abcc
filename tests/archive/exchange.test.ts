import { beforeAll, expect, test } from 'vitest';
import { copiesFrom, copiesToBytes, copyBlob, partsOfCopies } from '../../src/archive/exchange.ts';
import { firstFiled } from '../../src/archive/gradedReplica.ts';
import { ARCHIVE_LIMITS } from '../../src/archive/limits.ts';
import { replicaToBytes } from '../../src/archive/replica.ts';
import type { Problem } from '../../src/problem.ts';
import { ANN, engine, wholeTrack } from './replicas.ts';

beforeAll(engine);

/** A file whose parts are asked for one by one, and the most that was asked for at once. */
function watched(parts: readonly BlobPart[]): { file: Blob; most: () => number } {
  const file = new Blob([...parts]);
  const cut = file.slice.bind(file);
  let most = 0;
  Object.defineProperty(file, 'slice', {
    value: (from: number, to: number) => {
      most = Math.max(most, Math.min(to, file.size) - from);
      return cut(from, to);
    },
  });
  return { file, most: () => most };
}

async function read(file: Blob) {
  const ids: string[] = [];
  const problems: Problem[] = [];
  for await (const part of partsOfCopies(file, 1)) {
    if (!(part instanceof Uint8Array)) {
      problems.push(part);
      continue;
    }
    const { value, problems: more } = copiesFrom(part);
    ids.push(...(value ?? []).map(({ id }) => id));
    problems.push(...more);
  }
  return { ids, problems };
}

test('a track that says that it is larger than any is not read, and those beside it are', async () => {
  const [a, b] = ['a', 'b'].map((id) => replicaToBytes(firstFiled({ ...wholeTrack(), id }, ANN)));
  const huge = new Uint8Array(ARCHIVE_LIMITS.replicaBytes + 1);
  const { file, most } = watched([copiesToBytes([a]), copyBlob([huge]), copyBlob([b])]);
  const { ids, problems } = await read(file);
  expect(ids).toEqual(['a', 'b']);
  expect(problems).toEqual([
    {
      severity: 'error',
      where: 'track 2',
      what: 'It has 101 MB; 100 MB are read.',
      done: 'It was left out. Copy the file again.',
      times: 1,
    },
  ]);
  expect(most()).toBeLessThan(2 * a.length);
});

test('a file of one track that claims all that can be claimed is refused by its claim', async () => {
  const head = copiesToBytes([]);
  const { file, most } = watched([head, Uint8Array.of(255, 255, 255, 255), new Uint8Array(1_000_000)]);
  const { ids, problems } = await read(file);
  expect(ids).toEqual([]);
  expect(problems.map(({ what }) => what)).toEqual(['It has 4295 MB; 100 MB are read.']);
  expect(most()).toBeLessThan(100);
});
