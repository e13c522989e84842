import { CodedError } from '@ebbline/shared/errors/coded-error';
import type { HistoryRows } from '../evaluation/pipeline/history-rows';
import type { Pipeline } from '../evaluation/pipeline/pipeline';
import type { DeliveryGate } from '../ports/delivery-gate';
import { failpoint } from '../ports/failpoint';
import type { HistoryLayout, HistoryStore } from '../ports/history-store';
import type { Ticker } from '../ports/ticker';
import { settledWithin } from './settled-within';

/** So many regular commits without one confirmed write, of a store that says that it fails: two seconds. */
const commitsTillStuck = 4;
/** So long a change of layout waits for the rows before it, and the end for a store that says that it fails. ms */
const patienceMs = 5000;

/** A change of layout from its begin until the store has taken it. */
interface LayoutChange {
  /** While the store refuses it: to ask again. */
  askAgain: (() => void) | null;
}

/**
 * Moves rows from the pipeline to the store. Messages that the broker keeps until we acknowledge them
 * are let go only after the commit that covers them; but while the store takes nothing at all they are let go, since a broker
 * sends only so many more, and alarms on the newest values are worth more than rows that wait in memory.
 */
export class HistoryDrain {
  private underWay: Promise<void> = Promise.resolve();
  private writes = 0;
  /** Regular commits since a write was last confirmed, while there is anything to confirm. */
  private commitsInVain = 0;
  private fault: string | null = null;
  /** False where the store gave up the last rows. */
  private isKept = true;
  /** Rows handed over and not confirmed; while ending, those that the store gives up as well. */
  private rowsOpen = 0;
  /** While the layout changes nothing is taken from the pipeline. */
  private changing: LayoutChange | null = null;
  private ending = false;

  constructor(
    private readonly pipeline: Pipeline,
    private readonly store: HistoryStore,
    private readonly gate: DeliveryGate,
    private readonly nowMs: () => number,
    private readonly ticker: Ticker,
  ) {}

  /** The regular commit. Also while others are under way: the store bounds what waits for the disk, the pipeline does not. */
  commit(): void {
    this.changing?.askAgain?.();
    this.begin(this.gate.waiting() > 0);
    const isSettled = this.writes === 0 && this.isKept && this.changing === null;
    this.commitsInVain = isSettled ? 0 : this.commitsInVain + 1;
    this.letGoWhileStuck();
  }

  /** The early commit, for acknowledgements that wait, where no other is under way. */
  commitForWaiting(): void {
    this.letGoWhileStuck();
    if (this.writes === 0 && this.gate.waiting() > 0) this.begin(true);
  }

  /** Commits all there is, the unfinished second included. A store that fails is waited for no longer than some seconds. */
  async flush(): Promise<void> {
    this.ending = true;
    this.changing?.askAgain?.();
    if (this.changing !== null) await this.settled();
    this.begin(true);
    await this.settled();
    // Of a layout that the store never took: nobody can write them.
    if (this.changing !== null) this.rowsOpen += this.drain(true)?.count ?? 0;
  }

  /** Once all is closed: rows that history did not take before the end. */
  rowsUnwritten(): number {
    return this.rowsOpen;
  }

  /** Why the last commit failed; null where it did not. */
  trouble(): string | null {
    return this.fault;
  }

  /**
   * Writes all there is in the layout in use; lets `change` put another one in force, at once after the last row, and resolves;
   * goes on when the store takes the new one. While it does not, rows wait in the pipeline and it is asked with each commit.
   * @throws CodedError HISTORY_NOT_WRITTEN where rows of before are not written within some seconds: nothing was changed then
   */
  async changeLayout(layout: HistoryLayout, change: () => void): Promise<void> {
    // Rows of a layout that the store has not taken yet fit neither the one before nor the next: it has to be taken first.
    this.changing?.askAgain?.();
    if (this.changing !== null) await settledWithin(this.underWay, patienceMs, this.ticker);
    if (this.changing !== null) throw notWritten();
    const mine: LayoutChange = { askAgain: null };
    this.changing = mine;
    if (!(await settledWithin(this.underWay, patienceMs, this.ticker))) {
      this.changing = null;
      throw notWritten();
    }
    const rows = this.drain(true);
    try {
      change();
    } catch (fault) {
      this.changing = null;
      if (rows !== null) this.follow(this.write(rows));
      throw fault;
    }
    this.underWay = this.giveLayout(layout, rows, mine);
  }

  private async giveLayout(layout: HistoryLayout, rows: HistoryRows | null, mine: LayoutChange): Promise<void> {
    if (rows !== null) await this.write(rows);
    for (;;) {
      try {
        await this.store.useLayout(layout);
        this.changing = null;
        this.fault = null;
        this.commitsInVain = 0;
        return;
      } catch (error) {
        this.note(error);
        if (this.ending) return;
        await new Promise<void>((again) => (mine.askAgain = again));
        mine.askAgain = null;
      }
    }
  }

  /** Waits for what is under way; of a store that fails no longer than some seconds, since a full disk may stay full. */
  private async settled(): Promise<void> {
    while (!(await settledWithin(this.underWay, patienceMs, this.ticker)))
      if (this.store.health().state === 'failing') return;
  }

  /**
   * A store that fails and puts rows aside on the disk still confirms them: then nothing is let go before. Rows that it gave up, or
   * whose layout it refuses, are confirmed by nothing that is under way.
   */
  private letGoWhileStuck(): void {
    if (this.commitsInVain < commitsTillStuck || this.gate.waiting() === 0) return;
    const isLost = this.writes === 0 && !this.isKept;
    const isRefused = this.changing !== null && this.changing.askAgain !== null;
    if (isLost || isRefused || this.store.health().state === 'failing') this.gate.release(this.gate.mark());
  }

  private note(error: unknown): void {
    // Told in health; the store itself has tried again before it gave up.
    this.fault = error instanceof Error ? error.message : String(error);
  }

  private begin(everything: boolean): void {
    if (this.changing !== null) return;
    const mark = this.gate.mark();
    const rows = this.drain(everything);
    if (rows === null) {
      // Nothing new: what waits is covered as soon as the writes before it are, where they were kept.
      if (everything)
        void this.underWay.then(() => {
          if (this.isKept) this.gate.release(mark);
        });
      return;
    }
    this.follow(
      this.write(rows).then((isKept) => {
        if (!isKept) return;
        failpoint('tail-before-acknowledgement');
        if (everything) this.gate.release(mark);
      }),
    );
  }

  /** Null where there are none, and before the first sample of a source clock: then there is no time and nothing to keep. */
  private drain(everything: boolean): HistoryRows | null {
    const nowMs = this.nowMs();
    return Number.isNaN(nowMs) ? null : this.pipeline.drainHistory(nowMs, everything);
  }

  private follow(written: Promise<unknown>): void {
    this.writes += 1;
    this.underWay = Promise.all([this.underWay, written]).then(() => {
      this.writes -= 1;
    });
  }

  /** Resolves to whether the store confirmed them; never rejects. */
  private async write(rows: HistoryRows): Promise<boolean> {
    const { count } = rows;
    this.rowsOpen += count;
    try {
      await this.store.write(rows);
    } catch (error) {
      this.note(error);
      this.isKept = false;
      if (!this.ending) this.rowsOpen -= count;
      return false;
    }
    this.rowsOpen -= count;
    this.fault = null;
    this.commitsInVain = 0;
    this.isKept = true;
    return true;
  }
}

const notWritten = (): CodedError =>
  new CodedError(
    'HISTORY_NOT_WRITTEN',
    "history can't be written now; read the site file again when health names neither HISTORY_FAILING nor HISTORY_WRITE_FAILED",
  );
