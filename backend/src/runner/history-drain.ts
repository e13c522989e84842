import type { Pipeline } from '../evaluation/pipeline/pipeline';
import type { DeliveryGate } from '../ports/delivery-gate';
import type { HistoryStore } from '../ports/history-store';

/**
 * Moves rows from the pipeline to the store. Messages that the broker keeps until we acknowledge them
 * are let go only after the commit that covers them.
 */
export class HistoryDrain {
  private running: Promise<void> | null = null;
  private fault: string | null = null;

  constructor(
    private readonly pipeline: Pipeline,
    private readonly store: HistoryStore,
    private readonly gate: DeliveryGate,
    private readonly nowMs: () => number,
  ) {}

  /** The regular commit. Does nothing while one is under way. */
  commit(): void {
    this.begin(this.gate.waiting() > 0);
  }

  /** The early commit, for acknowledgements that wait. */
  commitForWaiting(): void {
    if (this.gate.waiting() > 0) this.begin(true);
  }

  /** Commits all there is, the unfinished second included. */
  async flush(): Promise<void> {
    await this.running;
    this.begin(true);
    await this.running;
  }

  /** Why the last commit failed; null where it did not. */
  trouble(): string | null {
    return this.fault;
  }

  private begin(everything: boolean): void {
    if (this.running !== null) return;
    const mark = this.gate.mark();
    const nowMs = this.nowMs();
    // Before the first sample of a source clock there is no time and nothing to keep.
    const rows = Number.isNaN(nowMs) ? null : this.pipeline.drainHistory(nowMs, everything);
    if (rows === null) {
      if (everything) this.gate.release(mark);
      return;
    }
    this.running = this.store
      .write(rows)
      .then(
        () => {
          this.fault = null;
          if (everything) this.gate.release(mark);
        },
        (error: unknown) => {
          // Not acknowledged: the broker keeps those messages. Told in health; the store itself says more.
          this.fault = error instanceof Error ? error.message : String(error);
        },
      )
      .finally(() => {
        this.running = null;
      });
  }
}
