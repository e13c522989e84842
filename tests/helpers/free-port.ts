import { createServer } from 'node:net';

/** A TCP port on 127.0.0.1 that was free just now. Another program may take it: who binds must retry. */
export function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const server = createServer();
    server.once('error', reject);
    server.listen(0, '127.0.0.1', () => {
      const address = server.address();
      const port = typeof address === 'object' && address !== null ? address.port : 0;
      server.close(() => resolve(port));
    });
  });
}

/** Tries `start` on free ports until one works; for servers that cannot bind port 0. */
export async function onFreePort<Started>(start: (port: number) => Promise<Started>, tries = 5): Promise<Started> {
  let last: unknown;
  for (let i = 0; i < tries; i++) {
    try {
      return await start(await freePort());
    } catch (fault) {
      last = fault;
    }
  }
  throw last;
}
