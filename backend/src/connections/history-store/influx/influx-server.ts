import { InfluxDB, type IPoint } from 'influx';
import { CodedError } from '@ebbline/shared/errors/coded-error';
import type { InfluxAddress } from './influx-address';

/** Numbers of one statement's first series, row by row; times in ms. */
export type InfluxRows = readonly (readonly (number | string | null)[])[];

interface RawReply {
  readonly results?: readonly {
    readonly series?: readonly { readonly values?: InfluxRows }[];
    readonly error?: string;
  }[];
}

const pointsAtOnce = 5000;
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

  /** Returns how many points were left out as older than the policy keeps. */
  async write(points: readonly IPoint[], retentionPolicy: string): Promise<number> {
    let leftOut = 0;
    for (let at = 0; at < points.length; at += pointsAtOnce) {
      const part = points.slice(at, at + pointsAtOnce);
      await this.#guarded('HISTORY_WRITE_FAILED', async () => {
        try {
          await this.#client.writePoints(part, { precision: 'ms', retentionPolicy });
        } catch (fault) {
          const [, dropped] = beyondRetention.exec(fault instanceof Error ? fault.message : '') ?? [];
          if (dropped === undefined) throw fault;
          leftOut += Number(dropped);
        }
      });
    }
    return leftOut;
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
      const said = fault instanceof Error ? fault.message : 'no reason given';
      const { user, password, shown } = this.#address;
      let safe = said;
      for (const secret of [password, user]) {
        if (secret !== null) safe = safe.replaceAll(secret, '•').replaceAll(encodeURIComponent(secret), '•');
      }
      throw new CodedError(code, `InfluxDB at ${shown}: ${safe.slice(0, 300)}; check that it runs and lets Ebbline in`);
    }
  }
}
