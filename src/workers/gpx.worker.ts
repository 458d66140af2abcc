import './language.ts';
import type { Reading } from '../problem.ts';
import { readGpx } from '../route/gpx.ts';
import type { Recording } from '../route/track.ts';
import { say } from '../words/words.ts';

/** What this worker says. It is sent one file, as a Blob. */
export type GpxMessage = { readonly bytesRead: number } | { readonly reading: Reading<Recording> };

/** Bytes between two reports of progress. */
const REPORT_BYTES = 2 ** 20;

addEventListener('message', (event: MessageEvent<Blob>) => {
  void read(event.data).then((reading) => {
    postMessage({ reading } satisfies GpxMessage, { transfer: buffersOf(reading.value) });
  });
});

async function read(file: Blob): Promise<Reading<Recording>> {
  let reported = 0;
  const onProgress = (bytesRead: number) => {
    if (bytesRead - reported < REPORT_BYTES) return;
    reported = bytesRead;
    postMessage({ bytesRead } satisfies GpxMessage);
  };
  try {
    return await readGpx(chunksOf(file), { onProgress });
  } catch (error) {
    const what = say.gpx.cannotRead(error instanceof Error ? error.message : String(error));
    const done = say.gpx.chooseAgain;
    return {
      value: null,
      problems: [{ severity: 'error', where: say.problem.theFile, what, done, times: 1 }],
    };
  }
}

/** Not every browser can iterate over a stream. */
async function* chunksOf(file: Blob): AsyncGenerator<Uint8Array> {
  const reader = file.stream().getReader();
  for (let next = await reader.read(); !next.done; next = await reader.read()) yield next.value;
}

function buffersOf(recording: Recording | null): Transferable[] {
  return (recording?.tracks ?? []).flatMap((track) =>
    [track.lng, track.lat, track.elevationM, track.timeS, track.distanceM, track.segmentStart].map(
      (column) => column.buffer as ArrayBuffer,
    ),
  );
}
