import { InfluxDB, type IPoint } from 'influx';
import { CodedError } from '@ebbline/shared/errors/coded-error';
import type { Refusal } from '../queue/refusal';
import type { InfluxAddress } from './influx-address';

/** Numbers of one statement's first series, row by row; times in ms. */
export type InfluxRows = readonly (readonly (number | string | null)[])[];

export interface WrittenPoints {
  /** Points older than the policy keeps. */
  readonly leftOut: number;
  readonly refused: Refusal | null;
}

interface RawReply {
  readonly results?: readonly {
    readonly series?: readonly { readonly values?: InfluxRows }[];
    readonly error?: string;
  }[];
}

/** Of one request: writing it out takes this thread some 50 ms, in which nothing is judged. */
const fieldsAtOnce = 20_000;
const pointsAtOnce = 5000;
const partlyDropped = /dropped=([1-9]\d*)/;
const beyondRetention = /points beyond retention policy dropped=(\d+)/;

/** Talks to one database. No fault carries the client's own error object: that holds the request with its credentials. */
export class InfluxServer {
  readonly #client: InfluxDB;
  readonly #address: InfluxAddress;

  constructor(address: InfluxAddress) {
    this.#address = address;
    this.#client = new InfluxDB({
      hosts: [{ host: address.host, port: address.port, protocol: address.protocol }],
      database: address.database,
      ...(address.user === null ? {} : { username: address.user }),
      ...(address.password === null ? {} : { password: address.password }),
    });
  }

  async createDatabase(): Promise<void> {
    await this.#guarded('HISTORY_OPEN_FAILED', () => this.#client.createDatabase(this.#address.database));
  }

  /** Creates it where it is absent, else sets how long it keeps what it holds. */
  async ensureRetentionPolicy(name: string, days: number, isDefault: boolean): Promise<void> {
    const options = { database: this.#address.database, duration: `${days}d`, replication: 1, isDefault };
    await this.#guarded('HISTORY_OPEN_FAILED', async () => {
      const known = await this.#client.showRetentionPolicies(this.#address.database);
      if (known.some((policy) => policy.name === name)) await this.#client.alterRetentionPolicy(name, options);
      else await this.#client.createRetentionPolicy(name, options);
    });
  }

  /**
   * What a request holds that the server will never take is left behind; the other requests are sent all the same.
   * @throws CodedError HISTORY_WRITE_FAILED
   */
  async write(points: Iterable<IPoint>, retentionPolicy: string): Promise<WrittenPoints> {
    let leftOut = 0;
    let refused: Refusal | null = null;
    for (const part of requestsOf(points)) {
      try {
        await this.#client.writePoints(part, { precision: 'ms', retentionPolicy });
      } catch (fault) {
        const said = fault instanceof Error ? fault.message : '';
        const [, tooOld] = beyondRetention.exec(said) ?? [];
        if (tooOld !== undefined) leftOut += Number(tooOld);
        else if (!isRefusal(fault)) throw this.#coded('HISTORY_WRITE_FAILED', fault);
        else {
          const rows: number = (refused?.rows ?? 0) + rowsRefused(part, said);
          refused = { rows, fault: this.#coded('HISTORY_ROWS_REFUSED', fault) };
        }
      }
    }
    return { leftOut, refused };
  }

  /** Runs statements; gives back the rows of each, in order. */
  async query(statements: readonly string[], code = 'HISTORY_READ_FAILED'): Promise<InfluxRows[]> {
    if (statements.length === 0) return [];
    return this.#guarded(code, async () => {
      const reply = (await this.#client.queryRaw([...statements], { precision: 'ms' })) as RawReply;
      return statements.map((_, index) => {
        const result = reply.results?.[index];
        if (result?.error !== undefined) throw new Error(result.error);
        return result?.series?.[0]?.values ?? [];
      });
    });
  }

  async #guarded<Value>(code: string, job: () => Promise<Value>): Promise<Value> {
    try {
      return await job();
    } catch (fault) {
      throw this.#coded(code, fault);
    }
  }

  #coded(code: string, fault: unknown): CodedError {
    const said = fault instanceof Error ? fault.message : 'no reason given';
    const { user, password, shown } = this.#address;
    let safe = said;
    for (const secret of [password, user]) {
      if (secret !== null) safe = safe.replaceAll(secret, '•').replaceAll(encodeURIComponent(secret), '•');
    }
    return new CodedError(code, `InfluxDB at ${shown}: ${safe.slice(0, 300)}; check that it runs and lets Ebbline in`);
  }
}

/** The server has read the rows and takes them never: not well-formed, or of another type than before. */
const isRefusal = (fault: unknown): boolean =>
  (fault as { res?: { statusCode?: number } } | null)?.res?.statusCode === 400;

/** At most so many rows: those of the request, unless the server says that it took the others. */
function rowsRefused(points: readonly IPoint[], said: string): number {
  const rows = new Set(points.map(({ tags, timestamp }) => `${String(timestamp)} ${tags?.['holder'] ?? ''}`)).size;
  const [, dropped] = partlyDropped.exec(said) ?? [];
  return Math.min(rows, Number(dropped ?? Infinity));
}

function* requestsOf(points: Iterable<IPoint>): Generator<IPoint[]> {
  let part: IPoint[] = [];
  let fields = 0;
  for (const point of points) {
    part.push(point);
    fields += Object.keys(point.fields ?? {}).length;
    if (part.length < pointsAtOnce && fields < fieldsAtOnce) continue;
    yield part;
    part = [];
    fields = 0;
  }
  if (part.length > 0) yield part;
}
