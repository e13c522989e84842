import type { UnitContext } from '../alarm-rules/judge-context';
import { createContext } from './fill-context';
import { hallStep } from './hall-step';
import type { PipelineState } from './pipeline-state';
import { dealtSlices, dueSlices, keptSlices, sliceMs, slicesPerSecond, stoodStill, unitsBySlice } from './slices';
import { unitStep } from './unit-step';

/** Runs slices in the order of time. Tells how much of it was left out. */
export class SliceRunner {
  private last = Number.NaN;
  private skipped = 0;
  private readonly units: readonly Int32Array[];
  private readonly context: UnitContext;

  constructor(
    private readonly pipeline: PipelineState,
    startMs: number,
    private readonly sliceOf = dealtSlices(pipeline.site.units.length),
  ) {
    this.units = unitsBySlice(sliceOf);
    this.context = createContext(pipeline);
    if (!Number.isNaN(startMs)) this.begin(startMs);
  }

  /** A runner for another site that goes on where this one is. */
  goOn(pipeline: PipelineState, unitsBefore: Int32Array): SliceRunner {
    const next = new SliceRunner(pipeline, Number.NaN, keptSlices(this.sliceOf, unitsBefore));
    next.last = this.last;
    next.skipped = this.skipped;
    return next;
  }

  /** Everything that is due up to `nowMs`; a time before the last one does nothing. */
  run(nowMs: number): void {
    if (Number.isNaN(this.last)) this.begin(nowMs);
    if (stoodStill(this.last, nowMs, this.pipeline.intake.clock)) {
      this.pipeline.stoodFromMs = this.last * sliceMs;
      this.pipeline.resumedMs = nowMs;
    }
    const { from, to, skipped } = dueSlices(this.last, nowMs);
    this.skipped += skipped;
    for (let slice = from; slice <= to; slice += 1) {
      this.last = slice;
      this.runSlice(slice);
    }
  }

  /** Tick time that bounded catch-up has left out since the start, ms. */
  skippedMs(): number {
    return this.skipped * sliceMs;
  }

  private begin(nowMs: number): void {
    this.pipeline.startedMs = nowMs;
    this.last = Math.floor(nowMs / sliceMs) - 1;
  }

  private runSlice(slice: number): void {
    const nowMs = slice * sliceMs;
    const ofSecond = slice % slicesPerSecond;
    if (ofSecond === 0) hallStep(this.pipeline, nowMs);
    for (const unit of this.units[ofSecond] as Int32Array) unitStep(this.pipeline, this.context, unit, nowMs);
  }
}
