/** So many annunciations within ten minutes are exceeded where a flood begins; it ends where there are fewer than `floodEndsBelow`. ANSI/ISA-18.2-2016. */
export const floodBeginsAbove = 10;
export const floodEndsBelow = 5;
/** Trailing and half open: (t − window, t]. */
export const floodWindowMs = 600_000;

export interface FloodSpan {
  /** When the count first exceeded `floodBeginsAbove`. */
  readonly fromMs: number;
  /** When it fell below `floodEndsBelow`; null: it goes on. */
  readonly toMs: number | null;
  /** Times of the first annunciation in the window in which it began, and of the last before it ended. */
  readonly firstMs: number;
  readonly lastMs: number;
  readonly annunciations: number;
  readonly most: number;
}

/** Where floods begin and end, from annunciations in order of time. What happens at one time is looked at together. */
export class FloodMeter {
  /** Times of the window from `first` on: those before it have left. */
  private readonly times: number[] = [];
  private first = 0;
  private open: FloodSpan | null = null;
  /** A time at which some fell out of the window and more may yet come in; NaN: none. */
  private undecidedMs = Number.NaN;
  private lastMs = Number.NEGATIVE_INFINITY;

  /** The flood that goes on, or null. */
  get flood(): FloodSpan | null {
    return this.open;
  }

  /** Annunciations in the window as last looked at. */
  get count(): number {
    return this.times.length - this.first;
  }

  /** One annunciation. A time before the last one counts as that one. Gives the flood that ended before it, or null. */
  note(atMs: number): FloodSpan | null {
    const nowMs = Math.max(atMs, this.lastMs);
    const ended = this.settle(nowMs);
    this.lastMs = nowMs;
    this.times.push(nowMs);
    this.dropUntil(nowMs);
    const { open, count } = this;
    if (open !== null) {
      const most = Math.max(open.most, count);
      this.open = { ...open, lastMs: nowMs, annunciations: open.annunciations + 1, most };
    } else if (count > floodBeginsAbove) {
      const found = { annunciations: count, most: count };
      this.open = { fromMs: nowMs, toMs: null, firstMs: this.times[this.first] ?? nowMs, lastMs: nowMs, ...found };
    }
    return ended;
  }

  /** Time has come to `nowMs`: gives the flood that ended before it, or null. */
  settle(nowMs: number): FloodSpan | null {
    for (;;) {
      const ended = this.decide(nowMs);
      if (ended !== null) return ended;
      const leavesMs = (this.times[this.first] ?? Number.POSITIVE_INFINITY) + floodWindowMs;
      if (!(leavesMs < nowMs)) return null;
      this.dropUntil(leavesMs);
    }
  }

  private decide(nowMs: number): FloodSpan | null {
    if (!(this.undecidedMs < nowMs)) return null;
    const atMs = this.undecidedMs;
    this.undecidedMs = Number.NaN;
    if (this.open === null || this.count >= floodEndsBelow) return null;
    const ended = { ...this.open, toMs: atMs };
    this.open = null;
    return ended;
  }

  private dropUntil(atMs: number): void {
    const before = this.first;
    for (let at = this.times[this.first]; at !== undefined && at + floodWindowMs <= atMs; at = this.times[this.first])
      this.first += 1;
    if (this.first === before) return;
    this.undecidedMs = atMs;
    // Now and then, so that each time is moved a few times at most.
    if (this.first * 2 > this.times.length) {
      this.times.splice(0, this.first);
      this.first = 0;
    }
  }
}

/** All floods of a list of times in order, up to a time; the last one may go on. */
export function floodsOf(times: readonly number[], untilMs: number): FloodSpan[] {
  const meter = new FloodMeter();
  const floods: FloodSpan[] = [];
  for (const atMs of times) {
    const ended = meter.note(atMs);
    if (ended !== null) floods.push(ended);
  }
  const last = meter.settle(untilMs) ?? meter.flood;
  if (last !== null) floods.push(last);
  return floods;
}
