import type { IPoint } from 'influx';
import { hourMs, minuteMs } from '../history-query';
import type { InfluxServer } from './influx-server';
import { minutesPolicy, secondsPolicy } from './to-points';

/** An hour's minutes are made so long after its end, as the embedded store seals it. */
const settleAfterMs = 10 * minuteMs;

/**
 * The hours whose seconds were written since their minutes were made. They stand in the database too, so that a
 * restart forgets none.
 */
export class MinutesDue {
  readonly #server: InfluxServer;
  /** Hour → how often it was written to. */
  readonly #writes = new Map<number, number>();

  private constructor(server: InfluxServer) {
    this.#server = server;
  }

  static async load(server: InfluxServer): Promise<MinutesDue> {
    const due = new MinutesDue(server);
    const [rows] = await server.query([`SELECT due FROM ${minutesPolicy}.minutes_due`], 'HISTORY_OPEN_FAILED');
    for (const [hour] of rows ?? []) due.#writes.set(Number(hour), 1);
    return due;
  }

  get hours(): ReadonlySet<number> {
    return new Set(this.#writes.keys());
  }

  async add(hours: Iterable<number>): Promise<void> {
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

  /** Makes the minutes of every hour that is over, on the server. An hour written to meanwhile stays due. */
  async settle(nowMs: number): Promise<void> {
    const over = [...this.#writes.keys()].filter((hour) => hour + hourMs + settleAfterMs <= nowMs);
    for (const hour of over.sort((a, b) => a - b)) {
      const writes = this.#writes.get(hour);
      const period = `time >= ${hour}ms AND time < ${hour + hourMs}ms`;
      const figures = 'SELECT min(*), mean(*), max(*), count(*)';
      const made = `${figures} INTO ${minutesPolicy}.minute FROM ${secondsPolicy}.second WHERE ${period} GROUP BY time(1m), * fill(none)`;
      await this.#server.query([made], 'HISTORY_MAINTAIN_FAILED');
      if (this.#writes.get(hour) !== writes) continue;
      await this.#server.query([`DELETE FROM minutes_due WHERE time = ${hour}ms`], 'HISTORY_MAINTAIN_FAILED');
      if (this.#writes.get(hour) === writes) this.#writes.delete(hour);
      else await this.#mark(hour);
    }
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
