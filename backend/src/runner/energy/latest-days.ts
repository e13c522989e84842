import type { Ticker } from '../../ports/ticker';
import { localDays } from './days-and-hours';
import type { EnergyParts } from './energy-from-history';
import { addFromHistory, addKept } from './unit-energy';

const dayMs = 86_400_000;
/** How far back the days are looked at that may have ended, or been forgotten, since the last look. */
const daysBack = 8;
/** One unit at a time: 1,000 units have had their turn after 84 minutes. ms */
const turnMs = 5_000;

/** Keeps the sums of days as they end, one unit after the other, so that who asks for a year need not wait for it. */
export class LatestDays {
  private next = 0;
  private running: Promise<void> | null = null;

  constructor(private readonly parts: EnergyParts) {}

  /** The turn of the next unit; does nothing while the last one lasts. */
  begin(): void {
    if (this.running !== null) return;
    this.running = this.keepNext()
      // The store tells in health that it can't be read; the days are looked at again with the unit's next turn.
      .catch(() => undefined)
      .finally(() => (this.running = null));
  }

  async end(): Promise<void> {
    await this.running;
  }

  private async keepNext(): Promise<void> {
    const { store } = this.parts;
    const [site, nowMs] = [this.parts.site(), this.parts.nowMs()];
    const unit = site.units[this.next % Math.max(1, site.units.length)];
    this.next += 1;
    const holder = site.holders[unit?.holder ?? -1];
    if (holder === undefined || Number.isNaN(nowMs)) return;
    const days = localDays(nowMs - daysBack * dayMs, nowMs, site.timeZone, daysBack + 2) ?? [];
    const overMs = store.overUntilMs(holder.id);
    const over = days.filter(({ endMs }) => endMs <= overMs);
    const question = { site, by: 'day', periods: [], nowMs, isLate: () => false } as const;
    await addFromHistory(question, this.parts, holder, addKept(question, this.parts, holder, over));
  }
}

/** Gives each unit its turn; the way to end it. */
export function keepDays(days: LatestDays, ticker: Ticker): () => Promise<void> {
  const turns = ticker.every(turnMs, () => days.begin());
  return () => {
    turns.stop();
    return days.end();
  };
}
