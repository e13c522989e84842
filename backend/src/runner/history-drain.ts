import type { HistoryRows } from '../evaluation/pipeline/history-rows';
import type { Pipeline } from '../evaluation/pipeline/pipeline';
import type { DeliveryGate } from '../ports/delivery-gate';
import { failpoint } from '../ports/failpoint';
import type { HistoryLayout, HistoryStore } from '../ports/history-store';

/** So many regular commits without one confirmed write, of a store that says that it fails: two seconds. */
const commitsTillStuck = 4;

/**
 * Moves rows from the pipeline to the store. Messages that the broker keeps until we acknowledge them
 * are let go only after the commit that covers them; but while the store takes nothing at all they are let go, since a broker
 * sends only so many more, and alarms on the newest values are worth more than rows that wait in memory.
 */
export class HistoryDrain {
  private underWay: Promise<void> = Promise.resolve();
  private writes = 0;
  /** Regular commits since a write was last confirmed, while any is under way. */
  private commitsInVain = 0;
  private fault: string | null = null;
  /** While the layout changes nothing is taken from the pipeline; called to try again. */
  private changing: (() => void) | null = null;
  private ending = false;

  constructor(
    private readonly pipeline: Pipeline,
    private readonly store: HistoryStore,
    private readonly gate: DeliveryGate,
    private readonly nowMs: () => number,
  ) {}

  /** The regular commit. Also while others are under way: the store bounds what waits for the disk, the pipeline does not. */
  commit(): void {
    this.changing?.();
    this.begin(this.gate.waiting() > 0);
    this.commitsInVain = this.writes === 0 ? 0 : this.commitsInVain + 1;
    this.letGoWhileStuck();
  }

  /** The early commit, for acknowledgements that wait, where no other is under way. */
  commitForWaiting(): void {
    this.letGoWhileStuck();
    if (this.writes === 0 && this.gate.waiting() > 0) this.begin(true);
  }

  /** Commits all there is, the unfinished second included. */
  async flush(): Promise<void> {
    this.ending = true;
    this.changing?.();
    if (this.changing !== null) await this.underWay;
    this.begin(true);
    await this.underWay;
  }

  /** Why the last commit failed; null where it did not. */
  trouble(): string | null {
    return this.fault;
  }

  /**
   * Writes all there is in the layout in use; lets `change` put another one in force, at once after the last row, and resolves;
   * goes on when the store takes the new one. While it does not, rows wait in the pipeline and it is asked with each commit.
   */
  async changeLayout(layout: HistoryLayout, change: () => void): Promise<void> {
    this.changing = () => undefined;
    await this.underWay;
    const nowMs = this.nowMs();
    const rows = Number.isNaN(nowMs) ? null : this.pipeline.drainHistory(nowMs, true);
    change();
    this.underWay = this.giveLayout(layout, rows);
  }

  private async giveLayout(layout: HistoryLayout, rows: HistoryRows | null): Promise<void> {
    if (rows !== null) await this.store.write(rows).catch((error: unknown) => this.note(error));
    for (;;) {
      try {
        await this.store.useLayout(layout);
        this.changing = null;
        this.fault = null;
        return;
      } catch (error) {
        this.note(error);
        if (this.ending) return;
        await new Promise<void>((again) => (this.changing = again));
      }
    }
  }

  /** A store that fails and puts rows aside on the disk still confirms them: then nothing is let go before. */
  private letGoWhileStuck(): void {
    if (this.commitsInVain < commitsTillStuck || this.gate.waiting() === 0) return;
    if (this.store.health().state === 'failing') this.gate.release(this.gate.mark());
  }

  private note(error: unknown): void {
    // Told in health; the store itself has tried again before it gave up.
    this.fault = error instanceof Error ? error.message : String(error);
  }

  private begin(everything: boolean): void {
    if (this.changing !== null) return;
    const mark = this.gate.mark();
    const nowMs = this.nowMs();
    // Before the first sample of a source clock there is no time and nothing to keep.
    const rows = Number.isNaN(nowMs) ? null : this.pipeline.drainHistory(nowMs, everything);
    if (rows === null) {
      // Nothing new: what waits is covered as soon as the writes before it are.
      if (everything) void this.underWay.then(() => this.gate.release(mark));
      return;
    }
    this.writes += 1;
    const written = this.store.write(rows).then(
      () => {
        this.fault = null;
        this.commitsInVain = 0;
        failpoint('tail-before-acknowledgement');
        if (everything) this.gate.release(mark);
      },
      (error: unknown) => this.note(error),
    );
    this.underWay = Promise.all([this.underWay, written]).then(() => {
      this.writes -= 1;
    });
  }
}
