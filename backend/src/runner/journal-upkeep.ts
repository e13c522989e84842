import type { AlarmJournal } from '../ports/alarm-journal';
import type { Clock } from '../ports/clock';
import type { RunnerHealth } from '../ports/health-report';
import type { Ticker } from '../ports/ticker';
import { SteadyClock } from './steady-clock';

const dayMs = 86_400_000;
/** How often it is looked whether rows are due, ms. */
const lookEveryMs = 600_000;
/** Rows that do not fill a file wait so long for more of them, days. */
const waitDays = 31;

/** Seals rows of the journal that were kept for long enough, one file at a time. */
export class JournalUpkeep {
  #running: Promise<void> | null = null;
  #trouble: string | null = null;
  readonly #steady: SteadyClock;

  constructor(
    private readonly journal: Pick<AlarmJournal, 'sealOldest'>,
    private readonly clock: Clock,
    /** For how long rows stay where they can be searched, days. */
    private readonly keepDays: number,
  ) {
    this.#steady = new SteadyClock(clock);
  }

  /** Looks by itself from now on. `stop` waits for what is under way. */
  follow(ticker: Ticker): { stop(): Promise<void> } {
    const ticking = ticker.every(lookEveryMs, () => void this.look());
    return {
      stop: async () => {
        ticking.stop();
        await this.#running;
      },
    };
  }

  look(): Promise<void> {
    this.#running ??= this.#seal().finally(() => (this.#running = null));
    return this.#running;
  }

  /** What is wrong with it, for health. */
  reasons(): ReturnType<RunnerHealth['reasons']> {
    return this.#trouble === null ? [] : [{ code: 'JOURNAL_UPKEEP_FAILED', message: this.#trouble }];
  }

  async #seal(): Promise<void> {
    if (!this.#steady.look()) return;
    const wallMs = this.clock.wallMs();
    const beforeMs = wallMs - this.keepDays * dayMs;
    try {
      while ((await this.journal.sealOldest({ beforeMs, urgentMs: beforeMs - waitDays * dayMs, wallMs })) > 0);
      this.#trouble = null;
    } catch (fault) {
      this.#trouble = fault instanceof Error ? fault.message : String(fault);
    }
  }
}
