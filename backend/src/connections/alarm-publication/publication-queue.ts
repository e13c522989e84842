/** A state of an alarm that waits to be told. */
export interface WaitingState {
  readonly alarm: string;
  readonly payload: string;
  /** The alarm stands no more: its topic is cleared after this is told. */
  readonly ends: boolean;
}

/**
 * States that wait for the broker, first in, first out, and so in order for each alarm. Of many of one alarm the newest wins
 * where room is short; where it is short all the same, the oldest go, and `lost` says that what stands must be told again.
 */
export class PublicationQueue {
  private waiting: WaitingState[] = [];
  private next = 0;
  /** States of which no newer one of the same alarm waits were given up. */
  lost = false;
  /** Alarms of which the end was given up: the broker may hold them still. */
  readonly endsLost = new Set<string>();

  /** @param limit how many wait at most, at least 2 */
  constructor(private readonly limit: number) {}

  get length(): number {
    return this.waiting.length - this.next;
  }

  put(state: WaitingState): void {
    this.waiting.push(state);
    if (this.length <= this.limit) return;
    this.keepNewest();
    if (this.length <= this.limit) return;
    // Some at once, so that the next ones do not each search all that wait.
    this.next = this.waiting.length - Math.ceil(this.limit / 2);
    for (const { alarm, ends } of this.waiting.slice(0, this.next)) if (ends) this.endsLost.add(alarm);
    this.lost = true;
  }

  take(): WaitingState | null {
    const state = this.waiting[this.next];
    if (state === undefined) return null;
    this.next += 1;
    if (this.next > 1000 && this.next * 2 > this.waiting.length) this.drop();
    return state;
  }

  /** Gives up every state of which a newer one of the same alarm waits. */
  keepNewest(): void {
    this.drop();
    const seen = new Set<string>();
    const kept: WaitingState[] = [];
    for (const state of [...this.waiting].reverse()) {
      if (seen.has(state.alarm)) continue;
      seen.add(state.alarm);
      kept.push(state);
    }
    this.waiting = kept.reverse();
  }

  /** Of which alarms a state waits. */
  alarms(): ReadonlySet<string> {
    return new Set(this.waiting.slice(this.next).map(({ alarm }) => alarm));
  }

  private drop(): void {
    this.waiting = this.waiting.slice(this.next);
    this.next = 0;
  }
}
