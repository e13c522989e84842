import type { HistoryAge, HistoryStore } from '../ports/history-store';

const hourMs = 3_600_000;

/** Lets the store seal and remove what is old, one time after the other. */
export class HistoryUpkeep {
  private running: Promise<void> | null = null;
  private fault: string | null = null;
  private begunMs = Number.NaN;

  constructor(
    private readonly store: HistoryStore,
    private readonly nowMs: () => number,
    private readonly age: () => HistoryAge,
  ) {}

  begin(): void {
    const nowMs = this.nowMs();
    if (this.running !== null || Number.isNaN(nowMs)) return;
    this.begunMs = nowMs;
    this.running = this.store
      .maintain(nowMs, this.age())
      .then(
        () => void (this.fault = null),
        (error: unknown) => void (this.fault = error instanceof Error ? error.message : String(error)),
      )
      .finally(() => (this.running = null));
  }

  /** On the source clock, where hours pass in seconds: begins as soon as an hour of tick time has passed since the last time. */
  follow(): void {
    const nowMs = this.nowMs();
    if (Number.isNaN(this.begunMs)) this.begunMs = nowMs;
    if (nowMs - this.begunMs >= hourMs) this.begin();
  }

  async end(): Promise<void> {
    await this.running;
  }

  trouble(): string | null {
    return this.fault;
  }
}
