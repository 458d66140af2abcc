import type { IncomingMessage, Server, ServerResponse } from 'node:http';
import { createServer } from 'node:http';
import { ARCHIVE_LIMITS } from '../archive/limits.ts';
import { parcelFrom, parcelToBytes } from '../archive/parcel.ts';
import { engineIsBroken } from '../archive/replica.ts';
import type { HostFolder, NotTaken } from './hostFolder.ts';
import type { May } from './hostKeys.ts';

/** Bytes of requests that are held at one moment, of everyone together. */
const MOST_HELD = 4 * ARCHIVE_LIMITS.replicaBytes;

/** Units of a track's id, as in files. */
const ID_LENGTH = 200;

const STATUS: Readonly<Record<NotTaken, number>> = {
  unknown: 404,
  incomplete: 409,
  'too large': 413,
  damaged: 422,
  'broken here': 500,
};

/**
 * Pages of any origin may ask, since a page has nothing to ask with but the key that its user typed in: no cookies are
 * used, and nothing is let in for where it comes from.
 */
const CORS = {
  'Access-Control-Allow-Origin': '*',
  'Access-Control-Allow-Methods': 'GET, POST',
  'Access-Control-Allow-Headers': 'Authorization, Content-Type',
  'Access-Control-Allow-Private-Network': 'true',
  'Access-Control-Max-Age': '7200',
  'Cache-Control': 'no-store',
  'X-Content-Type-Options': 'nosniff',
};

/** An answer: a status of HTTP (RFC 9110, section 15), and what goes with it. */
type Answer = readonly [status: number, body: Uint8Array | object];

/**
 * The server of a club. `GET /tracks` lists ids and heads, `POST /tracks/ID` exchanges parcels. Without a right key in
 * `Authorization: Bearer KEY` (RFC 6750, section 2.1) nothing is read, neither of the folder nor of the request.
 * `onBroken` is called after an answer once the engine gave way: then this process can only be started anew.
 */
export function hostServer(
  host: HostFolder,
  mayOf: (key: string) => Promise<May | null>,
  onBroken: () => void = () => {},
): Server {
  let held = 0;

  async function answer(request: IncomingMessage): Promise<Answer> {
    const [, key] = /^Bearer ([\w-]{1,200})$/i.exec(request.headers.authorization ?? '') ?? [];
    const may = key === undefined ? null : await mayOf(key);
    if (may === null) return [401, { refused: 'key' }];
    const path = (request.url ?? '').split('?')[0];
    if (request.method === 'GET' && path === '/tracks') return [200, { may, tracks: host.list() }];
    const id = request.method === 'POST' ? idIn(path) : null;
    return id === null ? [404, { refused: 'path' }] : exchanged(id, request, may);
  }

  async function exchanged(id: string, request: IncomingMessage, may: May): Promise<Answer> {
    const taken: Buffer[] = [];
    let size = 0;
    try {
      if (Number(request.headers['content-length']) > ARCHIVE_LIMITS.replicaBytes) return [413, tooLarge];
      for await (const chunk of request as AsyncIterable<Buffer>) {
        size += chunk.length;
        held += chunk.length;
        if (size > ARCHIVE_LIMITS.replicaBytes) return [413, tooLarge];
        if (held > MOST_HELD) return [503, { refused: 'busy' }];
        taken.push(chunk);
      }
      const parcel = parcelFrom(Buffer.concat(taken));
      if (parcel === null) return [400, { refused: 'parcel' }];
      if (may === 'read' && parcel.changes.length > 0) return [403, { refused: 'read only' }];
      const reply = await host.exchange(id, parcel);
      return typeof reply === 'string' ? [STATUS[reply], { refused: reply }] : [200, parcelToBytes(reply)];
    } finally {
      held -= size;
    }
  }

  const server = createServer((request, response) => {
    if (request.method === 'OPTIONS') return void response.writeHead(204, CORS).end();
    answer(request)
      .catch((error: unknown): Answer => {
        console.error(error);
        return [500, { refused: 'failed' }];
      })
      .then((said) => {
        send(request, response, said);
        if (engineIsBroken()) onBroken();
      })
      .catch(() => response.destroy());
  });
  server.maxConnections = 200;
  return server;
}

const tooLarge = { refused: 'too large' } as const;

/** What was not read of a request is not waited for. */
function send(request: IncomingMessage, response: ServerResponse, [status, body]: Answer): void {
  const isBytes = body instanceof Uint8Array;
  const type = isBytes ? 'application/octet-stream' : 'application/json';
  const close = request.complete ? {} : { Connection: 'close' };
  response.writeHead(status, { ...CORS, ...close, 'Content-Type': type });
  response.end(isBytes ? body : JSON.stringify(body));
}

function idIn(path: string): string | null {
  const [, encoded] = /^\/tracks\/([^/]+)$/.exec(path) ?? [];
  if (encoded === undefined) return null;
  try {
    const id = decodeURIComponent(encoded);
    return id.length <= ID_LENGTH ? id : null;
  } catch {
    return null;
  }
}
