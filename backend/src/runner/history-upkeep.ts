import type { HistoryStore } from '../ports/history-store';

/** Lets the store seal and remove what is old, one time after the other. */
export class HistoryUpkeep {
  private running: Promise<void> | null = null;
  private fault: string | null = null;

  constructor(
    private readonly store: HistoryStore,
    private readonly nowMs: () => number,
  ) {}

  begin(): void {
    const nowMs = this.nowMs();
    if (this.running !== null || Number.isNaN(nowMs)) return;
    this.running = this.store
      .maintain(nowMs)
      .then(
        () => void (this.fault = null),
        (error: unknown) => void (this.fault = error instanceof Error ? error.message : String(error)),
      )
      .finally(() => (this.running = null));
  }

  async end(): Promise<void> {
    await this.running;
  }

  trouble(): string | null {
    return this.fault;
  }
}
