import { readingUncertainty } from '../derive/reading-uncertainty';
import { createContext } from '../pipeline/fill-context';
import { hallStep } from '../pipeline/hall-step';
import { createPipelineState, type PipelineState } from '../pipeline/pipeline-state';
import { unitStep } from '../pipeline/unit-step';
import { badBits } from '../slots/quality-reasons';
import type { CompiledSite } from '../site/compiled-site';
import { SlotFiller } from './fill-slots';
import { measuredSlots, NoHistory } from './recomputed-trial';
import type { TrialColumns } from './trial-columns';

/**
 * Works out anew, from a stretch of what was measured, how sure every point of a unit and its hall was at its end: history has values and no
 * uncertainties.
 */
export class UncertaintyProbe {
  private readonly pipeline: PipelineState;
  private readonly context: ReturnType<typeof createContext>;
  private readonly filler: SlotFiller;
  private runs = false;

  /** @param site of one unit (`siteOfUnit`) @param columns of `measuredSlots` */
  constructor(
    private readonly site: CompiledSite,
    private readonly columns: TrialColumns,
  ) {
    this.pipeline = { ...createPipelineState(site, 'wall'), history: new NoHistory(site) };
    this.context = createContext(this.pipeline);
    this.filler = new SlotFiller(site, this.pipeline.state, measuredSlots(site));
    this.pipeline.startedMs = columns.startMs;
  }

  /** Takes in places [from, to) of the columns. */
  run(from: number, to: number): void {
    const { columns, context, pipeline } = this;
    for (let place = from; place < to; place += 1) {
      const nowMs = columns.startMs + place * columns.stepMs;
      this.runs = this.filler.fill(columns, place, nowMs);
      hallStep(pipeline, nowMs);
      unitStep(pipeline, context, 0, nowMs);
    }
  }

  /**
   * Expanded uncertainty of a slot as of the last place, in the unit of measure of the slot. NaN where there was no value, an input was bad, or
   * no accuracy is stated.
   */
  expanded(slot: number): number {
    const { reasons, value } = this.pipeline.state;
    const told = this.runs && ((reasons[slot] as number) & badBits) === 0 && !Number.isNaN(value[slot]);
    return told ? readingUncertainty(this.site, this.pipeline.state, slot) : Number.NaN;
  }
}
