import {
  backOffAfter,
  forgiven,
  isForgotten,
  noFailures,
  waitBefore,
  type BackOff,
  type BackOffEvent,
} from './sign-in-back-off';

/** So many names and stations are remembered; then the one that failed longest ago is forgotten. */
export const mostRemembered = 10_000;

/** Failures by name and by station, in memory only: a restart forgets them, and is no way in for who can't restart us. */
export class BackOffBook {
  readonly #states = new Map<string, BackOff>();

  /** The longest wait of all keys, ms; 0 where an attempt may be made. */
  waitMs(keys: readonly string[], nowMs: number): number {
    return Math.max(0, ...keys.map((key) => waitBefore(this.#states.get(key) ?? noFailures, nowMs)));
  }

  failures(key: string): number {
    return this.#states.get(key)?.failures ?? 0;
  }

  /**
   * A sign-in under a name: all that failed under it is forgiven, and at the station no more than that. Else whoever
   * has a name of their own could guess at others and wipe the count out by signing in between.
   */
  succeed(name: string, station: string, nowMs: number): void {
    const ofName = this.failures(name);
    this.note([name], 'succeed', nowMs);
    this.note([station], 'abandon', nowMs);
    const left = forgiven(this.#states.get(station) ?? noFailures, ofName);
    if (isForgotten(left, nowMs)) this.#states.delete(station);
    else this.#states.set(station, left);
  }

  note(keys: readonly string[], event: BackOffEvent, nowMs: number): void {
    for (const key of keys) {
      const next = backOffAfter(this.#states.get(key) ?? noFailures, event, nowMs);
      this.#states.delete(key);
      if (!isForgotten(next, nowMs)) this.#states.set(key, next);
    }
    // In order of the last note, so the first is the one that was quiet for longest.
    for (const [key, state] of this.#states) {
      if (this.#states.size <= mostRemembered) return;
      if (state.inFlight === 0) this.#states.delete(key);
    }
  }

  get size(): number {
    return this.#states.size;
  }
}
