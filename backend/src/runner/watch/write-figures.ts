import { Histogram } from '@ebbline/shared/statistics/histogram';

const writeBoundsS = [0.001, 0.0025, 0.005, 0.01, 0.025, 0.05, 0.1, 0.25, 0.5, 1, 2.5, 5, 10];

/** Commits of one store: how many, how many were refused, how long those took that were not. */
export class WriteFigures {
  readonly seconds = new Histogram(writeBoundsS);
  refused = 0;
  entries = 0;
  /** Why the last commit was refused; null where it was not. */
  trouble: string | null = null;

  committed(entries: number, tookMs: number): void {
    this.seconds.observe(tookMs / 1000);
    this.entries += entries;
    this.trouble = null;
  }

  failed(fault: unknown): void {
    this.refused += 1;
    this.trouble = fault instanceof Error ? fault.message : String(fault);
  }
}
