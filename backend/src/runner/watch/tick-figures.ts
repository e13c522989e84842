import { Histogram } from '@ebbline/shared/statistics/histogram';
import { sliceMs } from '../../evaluation/pipeline/slices';

const lagBoundsS = [0.025, 0.05, 0.1, 0.25, 0.5, 1, 2, 5, 10];
const sliceBoundsS = [0.0001, 0.00025, 0.0005, 0.001, 0.0025, 0.005, 0.01, 0.025, 0.05, 0.1, 0.25];
const tickBoundsS = [0.001, 0.0025, 0.005, 0.01, 0.025, 0.05, 0.1, 0.25, 0.5, 1, 2.5];

/** How late slices are judged and how long that takes. Lateness is measured on the wall clock only: elsewhere nothing is due by itself. */
export class TickFigures {
  readonly lag = new Histogram(lagBoundsS);
  readonly duration = new Histogram(tickBoundsS);
  /** What a slice took, by the mean of its tick. */
  readonly slice = new Histogram(sliceBoundsS);
  private doneMs = Number.NaN;
  private worstS = 0;

  /**
   * A tick is done.
   * @param nowMs the time that it judged up to
   * @param tookMs how long it took
   */
  ticked(kind: 'wall' | 'source', nowMs: number, tookMs: number): void {
    if (Number.isNaN(nowMs)) return;
    const upToMs = Math.floor(nowMs / sliceMs) * sliceMs;
    const before = Number.isNaN(this.doneMs) ? upToMs - sliceMs : this.doneMs;
    const slices = Math.max(0, (upToMs - before) / sliceMs);
    this.doneMs = Math.max(before, upToMs);
    if (slices === 0) return;
    this.duration.observe(tookMs / 1000);
    this.slice.observe(tookMs / 1000 / slices, slices);
    if (kind === 'source') return;
    const lagS = (nowMs + tookMs - (before + sliceMs)) / 1000;
    this.lag.observe(lagS);
    this.worstS = Math.max(this.worstS, lagS);
  }

  /** The worst lateness since this was last asked, s: asked by one only. */
  takeWorstLagS(): number {
    const worst = this.worstS;
    this.worstS = 0;
    return worst;
  }
}
