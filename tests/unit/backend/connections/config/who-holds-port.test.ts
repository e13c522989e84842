import { createServer, type AddressInfo } from 'node:net';
import { describe, expect, it } from 'vitest';
import { whoHoldsPort } from '../../../../../backend/src/connections/config/who-holds-port';
import { stopAfterEach } from '../../../../helpers/stop-after';

const keep = stopAfterEach();

describe('who holds a port', () => {
  it('is a program by name and process on Linux, or is not known; nobody where it is free', async () => {
    const server = createServer();
    await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
    const { port } = server.address() as AddressInfo;
    const closed = () => new Promise<void>((resolve) => server.close(() => resolve()));
    keep({ stop: () => (server.listening ? closed() : undefined) });
    const holder = whoHoldsPort(port);
    if (process.platform === 'linux') expect(holder).toContain(`(process ${process.pid})`);
    else expect(holder).toBeNull();
    await closed();
    expect(whoHoldsPort(port)).toBeNull();
  });
});
