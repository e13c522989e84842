import { createContext } from '../pipeline/fill-context';
import { hallStep } from '../pipeline/hall-step';
import { createPipelineState } from '../pipeline/pipeline-state';
import { unitStep } from '../pipeline/unit-step';
import type { CompiledSite } from '../site/compiled-site';
import { SlotFiller } from './fill-slots';
import { measuredSlots, NoHistory } from './recomputed-trial';
import type { TrialColumns } from './trial-columns';

/**
 * Expanded uncertainty of a derived point at the end of a stretch of what was measured, worked out anew: history has values and no
 * uncertainties. NaN where an input is bad.
 * @param columns of `measuredSlots`
 */
export function probeUncertainty(site: CompiledSite, columns: TrialColumns, slot: number): number {
  const pipeline = { ...createPipelineState(site, 'wall'), history: new NoHistory(site) };
  const context = createContext(pipeline);
  const filler = new SlotFiller(site, pipeline.state, measuredSlots(site));
  pipeline.startedMs = columns.startMs;
  for (let place = 0; place < columns.count; place += 1) {
    const nowMs = columns.startMs + place * columns.stepMs;
    filler.fill(columns, place, nowMs);
    hallStep(pipeline, nowMs);
    unitStep(pipeline, context, 0, nowMs);
  }
  return pipeline.state.expandedUncertainty[slot] ?? Number.NaN;
}
