import type { Pipeline } from '../evaluation/pipeline/pipeline';
import type { MemoryStore } from '../ports/memory-store';

/** Gives the pipeline back what was learnt before a restart, and keeps what it learns, one image after the other. */
export class Remembered {
  private running: Promise<void> | null = null;
  private isFirst = true;
  private fault: string | null = null;

  constructor(
    private readonly pipeline: Pipeline,
    private readonly store: MemoryStore,
    private readonly nowMs: () => number,
  ) {}

  /** Before the first message. What can't be used is learnt anew, and `trouble` says so until the next image is kept. */
  recall(): void {
    try {
      const image = this.store.load();
      const recalled = image === null ? null : this.pipeline.recall(image);
      if (recalled?.ok === false) this.fault = recalled.fault.message;
    } catch (error) {
      this.fault = text(error);
    }
  }

  /**
   * The first image of this run, as soon as the time is known. It tells how far the clock has come: one that is left from before the
   * clock was set back would tell the next start that it was set back once more.
   */
  saveFirst(): void {
    if (!this.isFirst || Number.isNaN(this.nowMs())) return;
    this.isFirst = false;
    this.save();
  }

  save(): void {
    const nowMs = this.nowMs();
    if (this.running !== null || Number.isNaN(nowMs)) return;
    this.running = this.store
      .save(this.pipeline.learnt(nowMs))
      .then(
        () => void (this.fault = null),
        (error: unknown) => void (this.fault = text(error)),
      )
      .finally(() => (this.running = null));
  }

  /** Keeps the last of it. */
  async end(): Promise<void> {
    await this.running;
    this.save();
    await this.running;
  }

  trouble(): string | null {
    return this.fault;
  }
}

const text = (error: unknown): string => (error instanceof Error ? error.message : String(error));
