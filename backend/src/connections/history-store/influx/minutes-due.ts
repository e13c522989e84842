import type { IPoint } from 'influx';
import { hourMs, minuteMs } from '../history-query';
import type { InfluxServer } from './influx-server';
import { minutesPolicy, secondsPolicy } from './to-points';

type Server = Pick<InfluxServer, 'query' | 'write'>;

/** An hour's minutes are made so long after its end, as the embedded store seals it. */
const settleAfterMs = 10 * minuteMs;

/**
 * The hours whose seconds were written since their minutes were made. They stand in the database too, so that a
 * restart forgets none.
 */
export class MinutesDue {
  readonly #server: Server;
  /** Hour → how often it was written to. */
  readonly #writes = new Map<number, number>();
  /** Hour → writes of which rows are still on their way: minutes made now would lack them. */
  readonly #underWay = new Map<number, number>();

  private constructor(server: Server) {
    this.#server = server;
  }

  static async load(server: Server): Promise<MinutesDue> {
    const due = new MinutesDue(server);
    const [rows] = await server.query([`SELECT due FROM ${minutesPolicy}.minutes_due`], 'HISTORY_OPEN_FAILED');
    for (const [hour] of rows ?? []) due.#writes.set(Number(hour), 1);
    return due;
  }

  get hours(): ReadonlySet<number> {
    return new Set(this.#writes.keys());
  }

  /** Marks hours as due before their rows are written, and makes no minutes of them until they are. */
  async whileWriting<Value>(hours: ReadonlySet<number>, write: () => Promise<Value>): Promise<Value> {
    for (const hour of hours) this.#underWay.set(hour, (this.#underWay.get(hour) ?? 0) + 1);
    try {
      // First what is due: should the program end in between, minutes are made once too often, never once too seldom.
      await this.#add(hours);
      return await write();
    } finally {
      for (const hour of hours) {
        const others = (this.#underWay.get(hour) ?? 1) - 1;
        if (others === 0) this.#underWay.delete(hour);
        else this.#underWay.set(hour, others);
      }
    }
  }

  async #add(hours: Iterable<number>): Promise<void> {
    const marks = [...hours].filter((hour) => {
      const writes = this.#writes.get(hour) ?? 0;
      this.#writes.set(hour, writes + 1);
      return writes === 0;
    });
    try {
      await this.#server.write(marks.map(markOf), minutesPolicy);
    } catch (fault) {
      // Not marked: the next write of the hour marks it again.
      for (const hour of marks) this.#writes.delete(hour);
      throw fault;
    }
  }

  /**
   * Makes the minutes of every hour that is over, on the server. An hour written to meanwhile stays due, and so does one
   * that fails, which holds up no other.
   * @throws CodedError HISTORY_MAINTAIN_FAILED the first fault, when every hour was tried
   */
  async settle(nowMs: number): Promise<void> {
    const over = [...this.#writes.keys()].filter((hour) => hour + hourMs + settleAfterMs <= nowMs);
    const faults: unknown[] = [];
    for (const hour of over.sort((a, b) => a - b))
      if (!this.#underWay.has(hour)) await this.#settleHour(hour).catch((fault: unknown) => void faults.push(fault));
    if (faults.length > 0) throw faults[0];
  }

  async #settleHour(hour: number): Promise<void> {
    const writes = this.#writes.get(hour);
    const period = `time >= ${hour}ms AND time < ${hour + hourMs}ms`;
    const figures = 'SELECT min(*), mean(*), max(*), count(*)';
    const made = `${figures} INTO ${minutesPolicy}.minute FROM ${secondsPolicy}.second WHERE ${period} GROUP BY time(1m), * fill(none)`;
    await this.#server.query([made], 'HISTORY_MAINTAIN_FAILED');
    if (this.#writes.get(hour) !== writes) return;
    await this.#server.query([`DELETE FROM minutes_due WHERE time = ${hour}ms`], 'HISTORY_MAINTAIN_FAILED');
    if (this.#writes.get(hour) === writes) this.#writes.delete(hour);
    else await this.#mark(hour);
  }

  /** Says again what is due, to a server that may have come back without it. */
  async markAll(): Promise<void> {
    const points = [...this.#writes.keys()].map(markOf);
    await this.#server.write(points, minutesPolicy);
  }

  /** Written to while its mark was being taken away. */
  async #mark(hour: number): Promise<void> {
    await this.#server.write([markOf(hour)], minutesPolicy);
  }
}

const markOf = (hour: number): IPoint => ({ measurement: 'minutes_due', fields: { due: 1 }, timestamp: hour });
