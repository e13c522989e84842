import { networkOf } from '../../access/network-of';
import type { Edge, EdgeRequest } from '../../ports/edge';
import type { RateLimits } from '../../ports/rate-limits';

/** How many screens may be connected: at once from one station, and in all. */
export interface SocketBounds {
  readonly ofStation: number;
  readonly ofAll: number;
}

/** Fifty screens behind one address, with the tabs that people leave open. */
export const usualBounds: SocketBounds = { ofStation: 200, ofAll: 1000 };

/** What a connection is: of which request it came, and when it ends. */
export interface CountedSocket {
  readonly request: EdgeRequest;
  once(event: 'close', then: () => void): unknown;
}

/** Counts the sockets that are open, and what they ask. */
export class SocketLimits {
  private readonly open = new Map<string, number>();
  private all = 0;

  constructor(
    private readonly edge: Pick<Edge, 'stationOf'>,
    private readonly rates: Pick<RateLimits, 'waitOf'>,
    private readonly bounds: SocketBounds = usualBounds,
  ) {}

  /** Whether one more may come from where this request comes from. */
  async mayOpen(request: EdgeRequest): Promise<boolean> {
    const station = networkOf(this.edge.stationOf(request));
    if ((await this.rates.waitOf('handshake', station)) !== null) return false;
    return this.all < this.bounds.ofAll && (this.open.get(station) ?? 0) < this.bounds.ofStation;
  }

  count(socket: CountedSocket): void {
    const station = networkOf(this.edge.stationOf(socket.request));
    this.all += 1;
    this.open.set(station, (this.open.get(station) ?? 0) + 1);
    socket.once('close', () => {
      this.all -= 1;
      const left = (this.open.get(station) ?? 1) - 1;
      if (left > 0) this.open.set(station, left);
      else this.open.delete(station);
    });
  }

  /** Whether what this socket asks is still taken. */
  async mayAsk(request: EdgeRequest): Promise<boolean> {
    return (await this.rates.waitOf('event', this.edge.stationOf(request))) === null;
  }
}
