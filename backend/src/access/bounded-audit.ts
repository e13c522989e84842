/** What tells entries of one kind apart: each station and cause is counted by itself. */
export interface Counted {
  readonly station: string;
  readonly cause: string;
}

/** Entries that were left out since the last sum. */
export interface Sum extends Counted {
  readonly left: number;
}

export const auditBounds = {
  windowMs: 60_000,
  /** Written one by one within a window. */
  perStation: 5,
  /** Written one by one within a window for one cause, however many the stations. */
  perCause: 60,
  /** Stations told apart within a window; the rest stands together as `otherStations`. */
  stations: 500,
} as const;

export const otherStations = 'other stations';

interface Window {
  readonly station: string;
  readonly cause: string;
  written: number;
  left: number;
}

/** Keeps a flood of refusals from filling the journal: the first few of each station stand there one by one, the rest as one number a minute. */
export class BoundedAudit {
  readonly #windows = new Map<string, Window>();
  readonly #written = new Map<string, number>();
  #beganMs: number | null = null;

  /** Whether an entry is to be written by itself; if not it is counted. Ask `due` first. */
  admits({ station, cause }: Counted, nowMs: number): boolean {
    this.#beganMs ??= nowMs;
    const window = this.#window(station, cause);
    const ofCause = this.#written.get(cause) ?? 0;
    if (window.written >= auditBounds.perStation || ofCause >= auditBounds.perCause) {
      window.left++;
      return false;
    }
    window.written++;
    this.#written.set(cause, ofCause + 1);
    return true;
  }

  /** What was left out of a window that is over, to be written as sums; a new one begins. `atOnce` ends the window before its time. */
  due(nowMs: number, atOnce = false): readonly Sum[] {
    const isOver = this.#beganMs !== null && (atOnce || nowMs - this.#beganMs >= auditBounds.windowMs);
    if (!isOver) return [];
    const sums = [...this.#windows.values()].filter(({ left }) => left > 0);
    this.#windows.clear();
    this.#written.clear();
    this.#beganMs = null;
    return sums.map(({ station, cause, left }) => ({ station, cause, left }));
  }

  #window(station: string, cause: string): Window {
    const key = `${cause} ${station}`;
    const known = this.#windows.get(key);
    if (known !== undefined) return known;
    if (this.#windows.size >= auditBounds.stations && station !== otherStations)
      return this.#window(otherStations, cause);
    const window = { station, cause, written: 0, left: 0 };
    this.#windows.set(key, window);
    return window;
  }
}
