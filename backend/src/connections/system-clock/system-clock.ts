import type { Clock } from '../../ports/clock';

/** The machine's clock. */
export class SystemClock implements Clock {
  wallMs(): number {
    return Date.now();
  }

  monotonicMs(): number {
    return performance.now();
  }
}
