import { readFileSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import { createServer as createSecureServer } from 'node:https';
import { connect, type AddressInfo } from 'node:net';
import { createWebSocketStream, WebSocketServer } from 'ws';
import type { IssuedFiles } from '../../helpers/certificates';

export interface WebsocketFront {
  readonly port: number;
  stop(): Promise<void>;
}

/** What stands before a broker on many sites: a web server that takes websockets at `/mqtt` and hands the bytes on. */
export async function startWebsocketFront(brokerPort: number, files: IssuedFiles | null): Promise<WebsocketFront> {
  const server: Server =
    files === null
      ? createServer()
      : createSecureServer({ cert: readFileSync(files.certificate), key: readFileSync(files.key) });
  const sockets = new WebSocketServer({
    server,
    path: '/mqtt',
    handleProtocols: (protocols) => (protocols.has('mqtt') ? 'mqtt' : false),
  });
  sockets.on('connection', (socket) => {
    const outside = createWebSocketStream(socket);
    const inside = connect(brokerPort, '127.0.0.1');
    outside.pipe(inside).pipe(outside);
    outside.on('error', () => inside.destroy());
    inside.on('error', () => outside.destroy());
    outside.on('close', () => inside.destroy());
    inside.on('close', () => outside.destroy());
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  return {
    port: (server.address() as AddressInfo).port,
    async stop() {
      for (const socket of sockets.clients) socket.terminate();
      await new Promise((resolve) => server.close(resolve));
    },
  };
}
