/**
 * Serves one kit's report to a browser on this machine, and tells it when the kit was made anew. Loopback only; the address holds a
 * random token; a request under another host's name, or from another origin's page, is refused.
 */
import { randomBytes } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';

const LOOPBACK = '127.0.0.1';

export interface Served {
  /** Where the report stands. */
  readonly url: string;
  /** Tells every open page to load anew. */
  readonly refresh: () => void;
  readonly close: () => Promise<void>;
}

/** @param file - path of the report; it may not be there yet */
export async function serveReport(file: string): Promise<Served> {
  const token = randomBytes(16).toString('hex');
  const waiting = new Set<ServerResponse>();
  let host = '';
  const server = createServer((request, response) => {
    answer(request, response).catch(() => refuse(response, 500));
  });
  await new Promise<void>((done, failed) => {
    server.once('error', failed);
    server.listen(0, LOOPBACK, done);
  });
  host = `${LOOPBACK}:${(server.address() as AddressInfo).port}`;

  async function answer(request: IncomingMessage, response: ServerResponse): Promise<void> {
    const { origin } = request.headers;
    // A page elsewhere that has guessed the port gets nothing, whatever name it gives this machine.
    if (request.headers.host !== host || (origin !== undefined && origin !== `http://${host}`))
      return refuse(response, 403);
    if (request.method !== 'GET') return refuse(response, 405);
    if (request.url === `/${token}/report.html`) {
      const page = await readFile(file, 'utf8').catch(() => NOT_YET);
      response.writeHead(200, { ...HEADERS, 'content-type': 'text/html; charset=utf-8' });
      response.end(page.replace('</body>', `<script>${reloader(token)}</script></body>`));
      return;
    }
    if (request.url === `/${token}/events`) {
      response.writeHead(200, { ...HEADERS, 'content-type': 'text/event-stream' });
      response.write(': open\n\n');
      waiting.add(response);
      response.on('close', () => waiting.delete(response));
      return;
    }
    refuse(response, 404);
  }

  return {
    url: `http://${host}/${token}/report.html`,
    refresh: () => {
      for (const response of waiting) response.write('data: made\n\n');
    },
    close: async () => {
      for (const response of waiting) response.end();
      server.closeAllConnections();
      await new Promise<void>((done) => server.close(() => done()));
    },
  };
}

const HEADERS = {
  'cache-control': 'no-store',
  'x-content-type-options': 'nosniff',
  'referrer-policy': 'no-referrer',
  'cross-origin-resource-policy': 'same-origin',
} as const;

const NOT_YET =
  '<!doctype html><html lang="en"><meta charset="utf-8"><title>No kit yet</title><body><p>No kit yet: see the terminal.</p></body></html>';

const reloader = (token: string): string =>
  `new EventSource('/${token}/events').onmessage = () => { sessionStorage.setItem('at', scrollY); location.reload(); };` +
  `scrollTo(0, Number(sessionStorage.getItem('at') ?? 0));`;

function refuse(response: ServerResponse, status: number): void {
  response.writeHead(status, { ...HEADERS, 'content-type': 'text/plain' });
  response.end(`${status}\n`);
}
