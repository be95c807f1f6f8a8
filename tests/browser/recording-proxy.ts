/** A proxy that writes down whatever a browser asks for, passes on what is for this machine, and refuses all else. */
import { Agent, createServer, request } from 'node:http';
import type { AddressInfo } from 'node:net';
import { onTestFinished } from 'vitest';

export type RecordingProxy = {
  /** For `--proxy-server`. */
  readonly address: string;
  /** Addresses as they were asked for; of an encrypted one, host and port. */
  readonly asked: readonly string[];
};

export async function openProxy(): Promise<RecordingProxy> {
  const asked: string[] = [];
  const agent = new Agent({ keepAlive: true });
  const server = createServer((incoming, answer) => {
    const url = incoming.url ?? '';
    asked.push(url);
    if (!url.startsWith('http://localhost:')) {
      answer.writeHead(403).end();
      return;
    }
    const passed = request(url, { agent, method: incoming.method, headers: incoming.headers }, (found) => {
      answer.writeHead(found.statusCode ?? 502, found.headers);
      found.pipe(answer);
    });
    passed.on('error', () => answer.writeHead(502).end());
    incoming.pipe(passed);
  });
  server.on('connect', ({ url }, socket) => {
    asked.push(url ?? '');
    socket.end('HTTP/1.1 403 Forbidden\r\n\r\n');
  });
  await new Promise<void>((done) => {
    server.listen(0, '127.0.0.1', done);
  });
  onTestFinished(async () => {
    agent.destroy();
    server.closeAllConnections();
    await new Promise((done) => {
      server.close(done);
    });
  });
  return { address: `http://127.0.0.1:${(server.address() as AddressInfo).port}`, asked };
}
