import type { Ticker } from '../../ports/ticker';

/** Timers of Node. A fault in the work goes up: it is never swallowed. */
export class SystemTicker implements Ticker {
  every(periodMs: number, work: () => void): { stop(): void } {
    const timer = setInterval(work, periodMs);
    return { stop: () => clearInterval(timer) };
  }
}
