import { createServer } from 'node:http';
import type { IncomingMessage, ServerResponse } from 'node:http';

/** A web host of static files that a test can make worse, and what it gave out. */
export interface WebHost {
  /** Ends with a slash. */
  readonly url: string;
  /** By path without the slash at the front. */
  readonly files: Map<string, Uint8Array>;
  /** How it behaves; to be changed at will. */
  readonly does: { ranges: boolean; cors: boolean; status: number | null };
  /** Bytes of files given out so far, and what was asked for. */
  readonly given: { bytes: number; asked: string[] };
  readonly close: () => Promise<void>;
}

/** Answers single ranges (RFC 9110, section 14) on a free port of this machine. */
export async function webHost(files: Record<string, Uint8Array> = {}): Promise<WebHost> {
  const host = {
    files: new Map(Object.entries(files)),
    does: { ranges: true, cors: true, status: null as number | null },
    given: { bytes: 0, asked: [] as string[] },
  };
  const server = createServer((request, response) => answer(host, request, response));
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const address = server.address();
  if (address === null || typeof address === 'string') throw new Error('The host got no port.');
  return {
    ...host,
    url: `http://127.0.0.1:${address.port}/`,
    close: () =>
      new Promise((resolve) => {
        server.closeAllConnections();
        server.close(() => resolve());
      }),
  };
}

function answer(
  { files, does, given }: Pick<WebHost, 'files' | 'does' | 'given'>,
  request: IncomingMessage,
  response: ServerResponse,
): void {
  const path = decodeURIComponent(new URL(request.url ?? '/', 'http://host').pathname.slice(1));
  const { range } = request.headers;
  given.asked.push(`${request.method} ${path} ${range ?? ''}`.trim());
  const headers: Record<string, string> = { 'Content-Type': 'application/octet-stream' };
  if (does.cors) headers['Access-Control-Allow-Origin'] = '*';
  const file = files.get(path);
  const end = (status: number, body?: Uint8Array) => {
    const sent = request.method === 'HEAD' ? undefined : body;
    given.bytes += sent?.length ?? 0;
    response.writeHead(status, headers);
    response.end(sent);
  };
  if (does.status !== null) return end(does.status);
  if (file === undefined) return end(404);
  const asked = /^bytes=(\d+)-(\d+)$/.exec(range ?? '');
  if (!does.ranges || asked === null) return end(200, file);
  const [from, to] = [Number(asked[1]), Math.min(Number(asked[2]), file.length - 1)];
  if (from >= file.length) return end(416);
  headers['Content-Range'] = `bytes ${from}-${to}/${file.length}`;
  end(206, file.subarray(from, to + 1));
}
