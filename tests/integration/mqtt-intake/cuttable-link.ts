import { createConnection, createServer, type AddressInfo, type Socket } from 'node:net';

export interface CuttableLink {
  readonly url: string;
  /** Breaks every connection at once, without a farewell, as a pulled cable or a killed process does. */
  cut(): void;
  /** True: nothing is passed on any more, and nothing is closed, as where a path between the machines is gone. */
  silence(silent: boolean): void;
  /** While closed, new connections are refused. */
  allow(open: boolean): void;
  stop(): Promise<void>;
}

/** A way to a broker that the test can break. */
export async function cuttableLink(port: number): Promise<CuttableLink> {
  const sockets = new Set<Socket>();
  let open = true;
  let isSilent = false;
  const server = createServer((near) => {
    if (!open) {
      near.resetAndDestroy();
      return;
    }
    const far = createConnection({ host: '127.0.0.1', port });
    for (const [one, other] of [
      [near, far],
      [far, near],
    ] as const) {
      sockets.add(one);
      one.on('data', (chunk) => {
        if (!isSilent && !other.destroyed) other.write(chunk);
      });
      one.on('error', () => undefined);
      one.on('close', () => {
        sockets.delete(one);
        other.destroy();
      });
    }
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const cut = (): void => {
    for (const socket of sockets) socket.resetAndDestroy();
  };
  return {
    url: `mqtt://127.0.0.1:${(server.address() as AddressInfo).port}`,
    cut,
    silence: (silent) => {
      isSilent = silent;
    },
    allow: (now) => {
      open = now;
    },
    stop: async () => {
      cut();
      await new Promise<void>((resolve) => server.close(() => resolve()));
    },
  };
}
