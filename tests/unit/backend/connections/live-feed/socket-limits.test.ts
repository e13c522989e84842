import { EventEmitter } from 'node:events';
import { expect, it } from 'vitest';
import { SocketLimits } from '../../../../../backend/src/connections/live-feed/socket-limits';
import type { RateKind } from '../../../../../backend/src/ports/rate-limits';

const from = (remoteAddress: string) => ({ headers: {}, socket: { remoteAddress } });
const edge = { stationOf: (request: ReturnType<typeof from>) => request.socket.remoteAddress };

function limits(refuse: RateKind | null = null) {
  const rates = { waitOf: (kind: RateKind) => Promise.resolve(kind === refuse ? 7 : null) };
  const made = new SocketLimits(edge, rates, { ofStation: 2, ofAll: 3 });
  const open = (station: string) => {
    const socket = Object.assign(new EventEmitter(), { request: from(station) });
    made.count(socket);
    return socket;
  };
  return { made, open };
}

it('a station may hold so many sockets, and all together so many; one that closes makes room', async () => {
  const { made, open } = limits();
  const first = open('192.0.2.1');
  open('192.0.2.1');
  expect(await made.mayOpen(from('192.0.2.1'))).toBe(false);
  expect(await made.mayOpen(from('192.0.2.2'))).toBe(true);
  open('192.0.2.2');
  expect(await made.mayOpen(from('192.0.2.3'))).toBe(false);
  first.emit('close');
  expect(await made.mayOpen(from('192.0.2.1'))).toBe(true);
  expect(await made.mayOpen(from('192.0.2.3'))).toBe(true);
});

it('handshakes and what is asked over a socket are counted each by its own limit', async () => {
  expect(await limits('handshake').made.mayOpen(from('192.0.2.1'))).toBe(false);
  expect(await limits('handshake').made.mayAsk(from('192.0.2.1'))).toBe(true);
  expect(await limits('event').made.mayOpen(from('192.0.2.1'))).toBe(true);
  expect(await limits('event').made.mayAsk(from('192.0.2.1'))).toBe(false);
});
