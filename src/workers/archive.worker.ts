import './language.ts';
import { engineIsBroken } from '../archive/replica.ts';
import { CHANNEL } from './archiveChannel.ts';
import type { ArchiveAnswer, ArchiveAsk, ArchiveChange } from './archiveWork.ts';
import { ARCHIVE, changesArchive, needsHistory } from './archiveWork.ts';
import { startHistory } from './history.ts';

const channel = new BroadcastChannel(CHANNEL);

self.onmessage = ({ data }: MessageEvent<ArchiveAsk>) => {
  void answered(data).then((answer) => {
    self.postMessage(answer);
    if (engineIsBroken()) self.postMessage({ number: -1, failed: 'RuntimeError' } satisfies ArchiveAnswer);
  });
};

async function answered({ number, name, given }: ArchiveAsk): Promise<ArchiveAnswer> {
  try {
    if (needsHistory(name)) await startHistory();
    const work = ARCHIVE[name] as (...given: readonly unknown[]) => Promise<unknown>;
    const answer = await work(...given);
    if (changesArchive(name)) channel.postMessage(name satisfies ArchiveChange);
    return { number, answer };
  } catch (error) {
    return { number, failed: error instanceof Error ? `${error.name}: ${error.message}` : String(error) };
  }
}
