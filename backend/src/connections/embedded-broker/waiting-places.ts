import { networkOf } from '../../access/network-of';
import type { BrokerLimits } from './broker-limits';

/** A connection as far as it is counted: from where it comes, and that it ends. */
export interface CountedConnection {
  readonly remoteAddress?: string | undefined;
  readonly remotePort?: number | undefined;
  destroy(): unknown;
  once(event: 'close', then: () => void): unknown;
}

/**
 * Connections that have not said yet who they are. Each holds a place of the broker for some seconds, so that one station,
 * or a few, could hold them all: those beyond a share are closed at once, and gateways come again by themselves.
 */
export class WaitingPlaces {
  /** By address and port, as a connection under TLS is another object than the one that came. */
  readonly #stationOf = new Map<string, string>();
  readonly #ofStation = new Map<string, number>();

  constructor(private readonly limits: Pick<BrokerLimits, 'waiting' | 'waitingOfStation'>) {}

  /** Counts a connection that has come, or closes it. */
  take(connection: CountedConnection): void {
    const station = networkOf(connection.remoteAddress ?? '');
    const waiting = this.#ofStation.get(station) ?? 0;
    if (this.#stationOf.size >= this.limits.waiting || waiting >= this.limits.waitingOfStation) {
      connection.destroy();
      return;
    }
    const key = keyOf(connection);
    this.#stationOf.set(key, station);
    this.#ofStation.set(station, waiting + 1);
    connection.once('close', () => this.#free(key));
  }

  /** It was let in: what it holds from now on is its own. */
  letIn(connection: Pick<CountedConnection, 'remoteAddress' | 'remotePort'>): void {
    this.#free(keyOf(connection));
  }

  #free(key: string): void {
    const station = this.#stationOf.get(key);
    if (station === undefined) return;
    this.#stationOf.delete(key);
    const left = (this.#ofStation.get(station) ?? 1) - 1;
    if (left > 0) this.#ofStation.set(station, left);
    else this.#ofStation.delete(station);
  }
}

const keyOf = ({ remoteAddress, remotePort }: Pick<CountedConnection, 'remoteAddress' | 'remotePort'>): string =>
  `${remoteAddress ?? ''} ${remotePort ?? ''}`;
