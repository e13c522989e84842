import type { InfluxServer } from './influx-server';
import { MinutesDue } from './minutes-due';
import { minutesPolicy, secondsPolicy } from './to-points';

/** The database with its retention policies, prepared by the first call that reaches the server. */
export class PreparedDatabase {
  readonly #server: InfluxServer;
  readonly #days: { readonly raw: number; readonly minutes: number };
  #due: MinutesDue | null = null;
  #isPrepared = false;
  #preparing: Promise<MinutesDue> | null = null;
  #fault: string | null = null;

  constructor(server: InfluxServer, days: { readonly raw: number; readonly minutes: number }) {
    this.#server = server;
    this.#days = days;
  }

  /** Why the latest attempt failed, until one succeeds. */
  get fault(): string | null {
    return this.#fault;
  }

  /** Creates what is absent, once; where that fails the next call tries again. @throws CodedError HISTORY_OPEN_FAILED */
  ready(): Promise<MinutesDue> {
    if (this.#due !== null && this.#isPrepared) return Promise.resolve(this.#due);
    this.#preparing ??= this.#prepare().finally(() => (this.#preparing = null));
    return this.#preparing;
  }

  /** After a write that failed: the server may come back empty, and is prepared anew before the next. @throws the fault */
  lost(fault: unknown): never {
    this.#isPrepared = false;
    throw fault;
  }

  async #prepare(): Promise<MinutesDue> {
    try {
      await this.#server.createDatabase();
      await this.#server.ensureRetentionPolicy(secondsPolicy, this.#days.raw, true);
      await this.#server.ensureRetentionPolicy(minutesPolicy, this.#days.minutes, false);
      const due = this.#due ?? (await MinutesDue.load(this.#server));
      if (this.#due !== null) await due.markAll();
      this.#due = due;
      this.#isPrepared = true;
      this.#fault = null;
      return due;
    } catch (fault) {
      this.#fault = fault instanceof Error ? fault.message : String(fault);
      throw fault;
    }
  }
}
