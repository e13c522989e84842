/**
 * Short-term noise of many signals, as the standard deviation of one sample, learnt from differences between
 * successive ticks (half their mean square: a slow drift leaves it alone; the "von Neumann" estimate, 1941).
 * A difference counts at most as three deviations of what is known, so that the step that is looked for does not hide itself.
 */
export class NoiseTable {
  private readonly variance: Float64Array;
  private readonly seen: Uint8Array;

  constructor(signals: number) {
    this.variance = new Float64Array(signals);
    this.seen = new Uint8Array(signals);
  }

  learn(signal: number, difference: number): void {
    if (Number.isNaN(difference)) return;
    const seen = this.seen[signal] as number;
    const known = this.variance[signal] as number;
    const half = (difference * difference) / 2;
    const counted = seen < warmUpTicks ? half : Math.min(half, 9 * known + tiny);
    if (seen < memoryTicks) this.seen[signal] = seen + 1;
    this.variance[signal] = known + (counted - known) * (shareOf[this.seen[signal] as number] as number);
  }

  deviation(signal: number): number {
    return Math.sqrt(this.variance[signal] as number);
  }
}

const warmUpTicks = 30;
const memoryTicks = 60;
/** What the newest difference counts for, by how many are seen. */
const shareOf = Float64Array.from({ length: memoryTicks + 1 }, (_, seen) => 1 / Math.min(memoryTicks, seen + 1));
/** Lets a signal that never moved (all differences zero) learn at all. */
const tiny = 1e-30;
