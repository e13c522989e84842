import { statfs } from 'node:fs/promises';
import { monitorEventLoopDelay } from 'node:perf_hooks';
import type { Clock } from '../../ports/clock';
import type { ProgramFigures, ProgramWatch } from '../../ports/program-watch';
import type { Ticker } from '../../ports/ticker';

/** How often the system's own measure looks, ms. What it tells holds this much of waiting itself. */
const RESOLUTION_MS = 20;
/** How often we look ourselves, ms. */
const LOOK_MS = 100;
/** Span of what is told of the thread's delay, and how often the disk is looked at, ms. */
const WINDOW_MS = 10_000;

type Disk = Pick<ProgramFigures, 'diskFreeBytes' | 'diskBytes'>;
const unknownDisk: Disk = { diskFreeBytes: Number.NaN, diskBytes: Number.NaN };
const noDelay: ProgramFigures['threadDelay'] = { medianS: 0, p99S: 0, maximumS: 0 };

/**
 * The system's histogram forgets, when it is begun anew, a hold-up that is going on; so the worst delay is taken from our
 * own timer as well, which forgets nothing.
 */
export class RunningProgramWatch implements ProgramWatch {
  private readonly histogram = monitorEventLoopDelay({ resolution: RESOLUTION_MS });
  private readonly startedMs: number;
  private readonly running: readonly { stop(): void }[];
  private lookedMs: number;
  private worstS = 0;
  private worstOfWindowS = 0;
  private delay = noDelay;
  private disk = unknownDisk;

  constructor(
    private readonly folder: string,
    private readonly clock: Clock,
    ticker: Ticker,
  ) {
    this.startedMs = this.lookedMs = clock.monotonicMs();
    this.histogram.enable();
    this.running = [ticker.every(LOOK_MS, () => this.look()), ticker.every(WINDOW_MS, () => this.turnWindow())];
    void this.lookAtDisk();
  }

  figures(): ProgramFigures {
    const { rss, heapUsed, external } = process.memoryUsage();
    const { user, system } = process.cpuUsage();
    return {
      threadDelay: this.delay,
      residentBytes: rss,
      heapBytes: heapUsed,
      outsideHeapBytes: external,
      userCpuS: user / 1e6,
      systemCpuS: system / 1e6,
      runningForS: (this.clock.monotonicMs() - this.startedMs) / 1000,
      ...this.disk,
    };
  }

  takeWorstDelayS(): number {
    const worst = this.worstS;
    this.worstS = 0;
    return worst;
  }

  stop(): void {
    for (const one of this.running) one.stop();
    this.histogram.disable();
  }

  private look(): void {
    const nowMs = this.clock.monotonicMs();
    const lateS = Math.max(0, nowMs - this.lookedMs - LOOK_MS) / 1000;
    this.lookedMs = nowMs;
    this.worstS = Math.max(this.worstS, lateS);
    this.worstOfWindowS = Math.max(this.worstOfWindowS, lateS);
  }

  private turnWindow(): void {
    const { histogram } = this;
    if (histogram.count > 0)
      this.delay = {
        medianS: delayS(histogram.percentile(50)),
        p99S: delayS(histogram.percentile(99)),
        maximumS: Math.max(delayS(histogram.max), this.worstOfWindowS),
      };
    histogram.reset();
    this.worstOfWindowS = 0;
    void this.lookAtDisk();
  }

  /** Room that a program without special rights may take. */
  private async lookAtDisk(): Promise<void> {
    try {
      const { bavail, blocks, bsize } = await statfs(this.folder);
      this.disk = { diskFreeBytes: bavail * bsize, diskBytes: blocks * bsize };
    } catch {
      // Not known; the stores say themselves what they can't write.
      this.disk = unknownDisk;
    }
  }
}

const delayS = (nanoseconds: number): number => Math.max(0, nanoseconds / 1e6 - RESOLUTION_MS) / 1000;
