import { mkdir } from 'node:fs/promises';
import { parseArgs } from 'node:util';
import { startReplicas } from '../archive/replica.ts';
import { engineBytes } from './engine.ts';
import { HostFolder } from './hostFolder.ts';
import { mayOf, newKey } from './hostKeys.ts';
import { hostServer } from './hostServer.ts';

const PORT = 8417;

/** As it stands in the list of commands. */
export const HOST_USAGE = [
  '  host --folder DIR     Serves the graded tracks of a club from a folder, until it is stopped (Ctrl+C).',
  `    --port N            instead of ${PORT}`,
  '    --address HOST      who may reach it: 127.0.0.1 (this machine, the default), 0.0.0.0 (the network)',
  '    --new-key NAME      makes a key for one leader, tells it once, and ends',
  '    --read-only         that key may take, not give',
];

/** Runs until it is stopped; the exit code where it does not come to that. */
export async function host(args: readonly string[]): Promise<number> {
  const options = optionsFrom(args);
  if (typeof options === 'string') {
    console.error(options);
    return 2;
  }
  const { folder, port, address, name, may } = options;
  try {
    await mkdir(folder, { recursive: true });
    if (name !== null) {
      console.log(await newKey(folder, name, may, Date.now()));
      console.error(`The key of ${name}. It is shown this once; ${folder}/keys.json keeps only its hash.`);
      return 0;
    }
    await startReplicas(engineBytes);
    const ended = new AbortController();
    const server = hostServer(
      await HostFolder.at(folder),
      (key) => mayOf(folder, key),
      () => ended.abort(),
    );
    await new Promise<void>((resolve, reject) => {
      server.once('error', reject);
      server.once('listening', resolve);
      server.listen(port, address);
    });
    const at = server.address() as { readonly port: number };
    console.log(`Serving ${folder} at http://${address}:${at.port}/`);
    return await new Promise((resolve) => {
      const end = (code: number) => {
        server.close(() => resolve(code));
        server.closeIdleConnections();
      };
      process.once('SIGINT', () => end(0));
      process.once('SIGTERM', () => end(0));
      ended.signal.addEventListener('abort', () => {
        console.error('What was sent broke the engine of histories; nothing of it was kept. Start again.');
        end(1);
      });
    });
  } catch (error) {
    console.error(`${folder} cannot be served: ${String(error)}`);
    return 1;
  }
}

function optionsFrom(args: readonly string[]) {
  try {
    const { values } = parseArgs({
      args: [...args],
      options: {
        folder: { type: 'string' },
        port: { type: 'string', default: `${PORT}` },
        address: { type: 'string', default: '127.0.0.1' },
        'new-key': { type: 'string' },
        'read-only': { type: 'boolean', default: false },
      },
    });
    const { folder, address } = values;
    const port = Number(values.port);
    if (folder === undefined) return 'Say which folder: --folder DIR.';
    if (!Number.isInteger(port) || port < 0 || port > 65_535) return 'A port is a number from 0 to 65535.';
    const may = values['read-only'] ? ('read' as const) : ('write' as const);
    return { folder, port, address, name: values['new-key'] ?? null, may };
  } catch (error) {
    return error instanceof Error ? error.message : String(error);
  }
}
