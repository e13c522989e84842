import { CodedError } from '@ebbline/shared/errors/coded-error';
import type { HistoryRows } from '../../evaluation/pipeline/history-rows';
import type {
  HistoryAge,
  HistoryBuckets,
  HistoryHealth,
  HistoryLayout,
  HistoryMinute,
  HistoryQuery,
  HistorySeconds,
  HistoryStore,
  MinuteQuery,
  SecondsQuery,
  TogetherQuery,
} from '../../ports/history-store';
import type { KeptEnergy } from '../../ports/kept-energy';

/** A day is taken to be over so long after its end: by then its last minutes are made, and late samples have come as a rule. */
const settleMs = 3_600_000;

interface Span {
  fromMs: number;
  toMs: number;
}

/**
 * The history store, with an eye on what is written behind the days that are over: what was kept of such a day is forgotten before the
 * rows are written, and nothing of the unit is kept that was read before they were there. They are in the minutes that sums are read
 * from with the next maintenance: until then nothing from them on is kept, and after a start nothing at all. The same holds for rows
 * that were put aside while the store was away.
 */
export class WatchedHistory implements HistoryStore {
  private layout: readonly string[] = [];
  private writes = 0;
  /** Oldest row of each write under way, ms. */
  private readonly underWay = new Map<number, number>();
  private readonly versions = new Map<string, number>();
  /** By holder, the oldest row that was written behind a day that is over, and is not in the minutes yet; ms. */
  private readonly unsettled = new Map<string, { fromMs: number; lastWrite: number }>();
  private isMaintained = false;
  /** Oldest row that was put aside and is not in the minutes yet, ms. */
  private asideMs = Infinity;

  constructor(
    private readonly store: HistoryStore,
    private readonly kept: KeptEnergy,
    private readonly nowMs: () => number,
    /** Is told what goes wrong with sums; rows are written all the same. */
    private readonly report: (fault: unknown) => void = () => undefined,
  ) {
    this.asideFromMs();
  }

  /** What ends until then is over, and all that was sent of it is in the store's minutes, but for what comes later still. */
  overUntilMs(holder: string): number {
    const nowMs = this.nowMs();
    if (Number.isNaN(nowMs) || !this.isMaintained) return -Infinity;
    const unsettledMs = this.unsettled.get(holder)?.fromMs ?? Infinity;
    return Math.min(nowMs - settleMs, this.asideFromMs(), unsettledMs, ...this.underWay.values());
  }

  /** Changes whenever something is written into a holder's past: what was read before is not to be kept then. */
  version(holder: string): number {
    return this.versions.get(holder) ?? 0;
  }

  useLayout(layout: HistoryLayout): Promise<void> {
    this.layout = layout.holders.map(({ id }) => id);
    return this.store.useLayout(layout);
  }

  async write(rows: HistoryRows): Promise<void> {
    this.writes += 1;
    const write = this.writes;
    const { oldestMs, past } = this.look(rows);
    this.underWay.set(write, oldestMs);
    try {
      for (const [holder, { fromMs, toMs }] of past) {
        this.versions.set(holder, this.version(holder) + 1);
        const before = this.unsettled.get(holder)?.fromMs ?? Infinity;
        this.unsettled.set(holder, { fromMs: Math.min(fromMs, before), lastWrite: write });
        if (fromMs < this.kept.untilMs()) this.forget(holder, fromMs, toMs);
      }
      await this.store.write(rows);
    } finally {
      this.underWay.delete(write);
    }
  }

  read(query: HistoryQuery): Promise<HistoryBuckets> {
    return this.store.read(query);
  }

  readSeconds(query: SecondsQuery): Promise<HistorySeconds> {
    return this.store.readSeconds(query);
  }

  readTogether(query: TogetherQuery): Promise<readonly HistorySeconds[]> {
    return this.store.readTogether(query);
  }

  readMinute(query: MinuteQuery): Promise<readonly HistoryMinute[]> {
    return this.store.readMinute(query);
  }

  async maintain(nowMs: number, age?: HistoryAge): Promise<void> {
    const committed = Math.min(this.writes, ...[...this.underWay.keys()].map((write) => write - 1));
    const waitingMs = this.waitingFromMs();
    this.asideFromMs();
    await this.store.maintain(nowMs, age);
    this.isMaintained = true;
    this.asideMs = waitingMs;
    if (waitingMs !== Infinity) return;
    for (const [holder, { lastWrite }] of this.unsettled) if (lastWrite <= committed) this.unsettled.delete(holder);
  }

  health(): HistoryHealth {
    return this.store.health();
  }

  waitingFromMs(): number {
    return this.store.waitingFromMs?.() ?? Infinity;
  }

  close(): Promise<void> {
    return this.store.close();
  }

  /** Rows are originals and sums are not: a fault here loses no row. */
  private forget(holder: string, fromMs: number, toMs: number): void {
    try {
      this.kept.forget(holder, fromMs, toMs);
    } catch (cause) {
      const said = cause instanceof Error ? cause.message : String(cause);
      const what = `sums of energy of ${holder}, to which late rows were added, could not be forgotten: ${said}; they are left alone until the next start: before it, see to the disk and the permissions of the data folder, and remove the file of sums, which are made anew`;
      this.report(new CodedError('ENERGY_SUMS_NOT_FORGOTTEN', what, { cause }));
    }
  }

  private asideFromMs(): number {
    this.asideMs = Math.min(this.asideMs, this.waitingFromMs());
    return this.asideMs;
  }

  private look(rows: HistoryRows): { oldestMs: number; past: ReadonlyMap<string, Span> } {
    const nowMs = this.nowMs();
    // A clock that ran ahead for a while may have had days kept that were not over.
    const overMs = Number.isNaN(nowMs) ? Infinity : Math.max(nowMs - settleMs, this.kept.untilMs());
    const past = new Map<string, Span>();
    let oldestMs = Infinity;
    for (let row = 0; row < rows.count; row += 1) {
      const atMs = rows.secondMs[row] ?? Number.NaN;
      if (atMs < oldestMs) oldestMs = atMs;
      if (!(atMs < overMs)) continue;
      const holder = this.layout[rows.holder[row] ?? -1];
      if (holder === undefined) continue;
      const span = past.get(holder);
      if (span === undefined) past.set(holder, { fromMs: atMs, toMs: atMs });
      else {
        span.fromMs = Math.min(span.fromMs, atMs);
        span.toMs = Math.max(span.toMs, atMs);
      }
    }
    return { oldestMs, past };
  }
}
