import type { Pipeline } from '../evaluation/pipeline/pipeline';
import type { DeliveryGate } from '../ports/delivery-gate';
import type { HistoryStore } from '../ports/history-store';

/**
 * Moves rows from the pipeline to the store. Messages that the broker keeps until we acknowledge them
 * are let go only after the commit that covers them.
 */
export class HistoryDrain {
  private underWay: Promise<void> = Promise.resolve();
  private writes = 0;
  private fault: string | null = null;

  constructor(
    private readonly pipeline: Pipeline,
    private readonly store: HistoryStore,
    private readonly gate: DeliveryGate,
    private readonly nowMs: () => number,
  ) {}

  /** The regular commit. Also while others are under way: the store bounds what waits for the disk, the pipeline does not. */
  commit(): void {
    this.begin(this.gate.waiting() > 0);
  }

  /** The early commit, for acknowledgements that wait, where no other is under way. */
  commitForWaiting(): void {
    if (this.writes === 0 && this.gate.waiting() > 0) this.begin(true);
  }

  /** Commits all there is, the unfinished second included. */
  async flush(): Promise<void> {
    this.begin(true);
    await this.underWay;
  }

  /** Why the last commit failed; null where it did not. */
  trouble(): string | null {
    return this.fault;
  }

  private begin(everything: boolean): void {
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
        if (everything) this.gate.release(mark);
      },
      (error: unknown) => {
        // Told in health; the store itself has tried again before it gave up.
        this.fault = error instanceof Error ? error.message : String(error);
      },
    );
    this.underWay = Promise.all([this.underWay, written]).then(() => {
      this.writes -= 1;
    });
  }
}
