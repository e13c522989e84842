import type { DemoState } from '@ebbline/shared/contract/demo-faults';

type Active = DemoState['active'][number];

interface Known {
  readonly sinceMs: number;
  readonly repaired: boolean;
}

const keyOf = ({ id, unit, branch }: Active): string => `${unit} ${id} ${branch ?? ''}`;

/**
 * Since when each fault and operation of the demo goes on. The simulator speaks when something changes: in between its
 * durations stand still, and of a shut branch or an open hose it tells none. Times in ms of one monotonic clock.
 */
export class DemoDurations {
  private known = new Map<string, Known>();

  hear(active: readonly Active[], nowMs: number): void {
    this.known = new Map(active.map((one) => [keyOf(one), this.sinceOf(one, nowMs)]));
  }

  /** What goes on, with how long it has by now. */
  at(active: readonly Active[], nowMs: number): Active[] {
    return active.map((one) => {
      const sinceMs = this.known.get(keyOf(one))?.sinceMs ?? nowMs;
      return { ...one, forSeconds: Math.max(0, nowMs - sinceMs) / 1000 };
    });
  }

  private sinceOf(one: Active, nowMs: number): Known {
    const { repaired, forSeconds } = one;
    const before = this.known.get(keyOf(one));
    const begunAnew = before?.repaired === true && !repaired;
    if (forSeconds > 0 || before === undefined || begunAnew) return { sinceMs: nowMs - forSeconds * 1000, repaired };
    return { sinceMs: before.sinceMs, repaired };
  }
}
