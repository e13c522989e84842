import type { FaultSize } from '../faults/fault';
import { deepLowIsOver, deepLowPa } from './deep-low';
import type { Timed } from './timed';

/** What comes over the whole site. Times in seconds since the simulation's start. */
export class SiteEvents {
  private low: (Timed & { readonly size: FaultSize }) | null = null;

  lowPa(nowS: number): number {
    if (!this.low) return 0;
    const { sinceS, repairedS, size } = this.low;
    const endedForS = repairedS === null ? null : nowS - repairedS;
    if (deepLowIsOver(endedForS)) this.low = null;
    return deepLowPa(size, nowS - sinceS, endedForS);
  }

  get deepLow(): (Timed & { readonly size: FaultSize }) | null {
    return this.low;
  }

  beginLow(size: FaultSize, nowS: number): void {
    this.low = { size, sinceS: nowS, repairedS: null };
  }
}
