import { RateLimiterMemory, RateLimiterRes } from 'rate-limiter-flexible';
import { networkOf } from '../../access/network-of';
import { rateKinds, type AttemptLimits, type RateKind, type RateLimits } from '../../ports/rate-limits';
import { limitsOfKind, type Limit } from './limits-of-kind';

/** Stations counted apart at a time, per kind; all further ones share one count until a window has passed. */
const STATIONS_APART = 10_000;
const EVERYONE_ELSE = 'everyone else';

/** Counts in memory, each kind apart; a new start forgets. */
export function memoryRateLimits(
  limits: Readonly<Record<RateKind, Limit>> = limitsOfKind,
  stationsApart = STATIONS_APART,
): RateLimits & AttemptLimits {
  const counters = Object.fromEntries(
    rateKinds.map((kind) => [kind, new Counter(limits[kind], stationsApart)]),
  ) as unknown as Readonly<Record<RateKind, Counter>>;
  return {
    waitOf: (kind, station) => counters[kind].waitOf(networkOf(station)),
    waitNow: (kind, station) => counters[kind].waitNow(networkOf(station)),
    refused: () =>
      Object.fromEntries(rateKinds.map((kind) => [kind, counters[kind].refused])) as Record<RateKind, number>,
  };
}

class Counter {
  refused = 0;
  private readonly limiter: RateLimiterMemory;
  /** Stations that have a count of their own, and until when, ms of the monotonic clock; oldest first. */
  private readonly apart = new Map<string, number>();

  constructor(
    private readonly limit: Limit,
    private readonly stationsApart: number,
  ) {
    this.limiter = new RateLimiterMemory({ points: limit.points, duration: limit.windowS });
  }

  async waitOf(station: string): Promise<number | null> {
    try {
      await this.limiter.consume(this.keyOf(station));
      return null;
    } catch (refusal) {
      if (!(refusal instanceof RateLimiterRes)) throw refusal;
      return this.refuse(refusal);
    }
  }

  async waitNow(station: string): Promise<number | null> {
    const counted = await this.limiter.get(this.keyOf(station));
    return counted === null || counted.consumedPoints < this.limit.points ? null : this.refuse(counted);
  }

  private refuse({ msBeforeNext }: RateLimiterRes): number {
    this.refused += 1;
    // A wall clock that was set back would make it longer than it is.
    return Math.min(this.limit.windowS, Math.max(1, Math.ceil(msBeforeNext / 1000)));
  }

  private keyOf(station: string): string {
    const nowMs = performance.now();
    for (const [one, untilMs] of this.apart) {
      if (untilMs > nowMs) break;
      this.apart.delete(one);
    }
    if (this.apart.has(station)) return station;
    if (this.apart.size >= this.stationsApart) return EVERYONE_ELSE;
    this.apart.set(station, nowMs + this.limit.windowS * 1000);
    return station;
  }
}
