import type { Problem, Reading } from '../problem.ts';
import { Decoder } from './decode.ts';
import { FaultList, Stop } from './faults.ts';
import type { ReadLimits } from './limits.ts';
import { READ_LIMITS } from './limits.ts';
import { Recorder } from './recorder.ts';
import type { Recording } from './track.ts';
import { Xml } from './xml.ts';

/** Bytes handled at a time: progress and cancelling are this fine. Larger steps are slower, and need more memory. */
const STEP_BYTES = 8_192;

export interface ReadOptions {
  /** Called with the bytes of the file read so far. */
  readonly onProgress?: (bytesRead: number) => void;
  /** Makes the promise reject with the signal's reason. */
  readonly signal?: AbortSignal;
  readonly limits?: Partial<ReadLimits>;
}

/**
 * Reads GPX 1.1 or 1.0, plain or packed with gzip, whole or as it streams in.
 *
 * `value` is null where nothing could be used: not GPX, a document type declared, or not one point. A file that
 * breaks off or is malformed gives an error and the points before the break. Rejects only when cancelled, or when
 * `input` itself fails.
 */
export async function readGpx(
  input: AsyncIterable<Uint8Array> | Uint8Array,
  { onProgress, signal, limits: stricter }: ReadOptions = {},
): Promise<Reading<Recording>> {
  const limits = { ...READ_LIMITS, ...stricter };
  const faults = new FaultList();
  const recorder = new Recorder(limits, faults);
  const xml = new Xml(recorder, limits, faults);
  const decoder = new Decoder(limits, faults, (text) => xml.push(text));
  recorder.lineNow = () => xml.line;
  let bytesRead = 0;
  try {
    for await (const chunk of input instanceof Uint8Array ? [input] : input) {
      for (let at = 0; at < chunk.length; at += STEP_BYTES) {
        signal?.throwIfAborted();
        const step = chunk.subarray(at, at + STEP_BYTES);
        decoder.push(step);
        bytesRead += step.length;
        onProgress?.(bytesRead);
      }
    }
    decoder.end();
    xml.end();
  } catch (stop) {
    if (!(stop instanceof Stop)) throw stop;
    if (stop.fault.refuses) return { value: null, problems: refusal(stop) };
    faults.add(stop.fault, xml.line, '', stop.detail);
  }
  return { value: recorder.take(), problems: faults.problems() };
}

/** What else is wrong with a file that was turned away is of no interest. */
function refusal({ fault, detail }: Stop): Problem[] {
  const faults = new FaultList();
  faults.add(fault, 0, '', detail);
  return faults.problems();
}
