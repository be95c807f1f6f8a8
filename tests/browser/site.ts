/** Serves a built app on this machine at a free port, and can be stopped to prove that the app needs no server. */
import { readFile } from 'node:fs/promises';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { extname, join, normalize } from 'node:path';
import { inject, onTestFinished } from 'vitest';

const types: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript',
  '.css': 'text/css',
  '.json': 'application/json',
  '.webmanifest': 'application/manifest+json',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.woff2': 'font/woff2',
  '.ttf': 'font/ttf',
};

export type Site = {
  /** Ends with a slash. */
  readonly address: string;
  /** From now on this folder is served: a new version is put on the server. */
  readonly serve: (folder: string) => void;
  /** The server is gone, open connections too. May be called twice. */
  readonly stop: () => Promise<void>;
};

/**
 * Serves `folder`, by default the app as built for this run, until the test ends or `stop` is called.
 * @param headers sent with every file; by default none, as a plain host does
 */
export async function openSite(
  folder: string = inject('builtApp'),
  headers: Readonly<Record<string, string>> = {},
): Promise<Site> {
  let served = folder;
  const server = createServer(async (request, response) => {
    const { pathname } = new URL(request.url ?? '/', 'http://localhost');
    const name = normalize(pathname.endsWith('/') ? `${pathname}index.html` : pathname);
    try {
      const content = await readFile(join(served, name));
      const type = types[extname(name)] ?? 'application/octet-stream';
      response.writeHead(200, { 'content-type': type, 'cache-control': 'no-cache', ...headers }).end(content);
    } catch {
      response.writeHead(404).end();
    }
  });
  await new Promise<void>((done) => {
    server.listen(0, 'localhost', done);
  });
  const stop = async (): Promise<void> => {
    server.closeAllConnections();
    if (server.listening)
      await new Promise<void>((done) => {
        server.close(() => done());
      });
  };
  onTestFinished(stop);
  const { port } = server.address() as AddressInfo;
  return {
    address: `http://localhost:${port}/`,
    serve: (next) => {
      served = next;
    },
    stop,
  };
}
