import type { GuidedEnd, GuidedResult } from '@ebbline/shared/contract/guided-test';
import type { PipelineState } from '../pipeline-state';
import type { GuidedRecord } from './guided-record';
import { asBegun, measurePlan } from './guided-steps';
import { guidedTable } from './guided-table';
import { guidedView } from './guided-view';
import { measuredOf } from './measured-of';
import { brokenOff } from './move-on';

/** Why a test goes no further, what was in the way, and who said so; null: the program. */
export interface Break {
  readonly endedFor: GuidedEnd;
  readonly said: string | null;
  readonly by: string | null;
}

/** A test that goes no further. What was measured until then stays on its record, without a verdict. */
export function breakOff(
  pipeline: PipelineState,
  record: GuidedRecord,
  { endedFor, said, by }: Break,
  nowMs: number,
): GuidedRecord {
  const unitIndex = pipeline.site.units.findIndex(({ id }) => id === record.unit);
  if (unitIndex < 0) return brokenOff(record, endedFor, said, by, nowMs);
  const test = guidedTable[record.kind];
  const view = guidedView(pipeline, unitIndex, record.settings, record.steps);
  const result = test.tellsWhatIsWhole === true ? withoutVerdict(test.judge(view, record.steps)) : null;
  const plan = measurePlan(test, view, record);
  const measuring = pipeline.guided.open.get(record.unit)?.measuring ?? null;
  const so = { ...record, result };
  if (plan === null || measuring === null || measuring.series.samples === 0)
    return brokenOff(so, endedFor, said, by, nowMs);
  const seconds = (nowMs - measuring.beganMs) / 1000;
  const measured = measuredOf(asBegun(plan, measuring.readings), measuring.series, seconds);
  const steps = record.steps.map((step, i) => (i === record.at ? { ...step, measured } : step));
  return brokenOff({ ...so, steps }, endedFor, said, by, nowMs);
}

/** Null where nothing is whole yet. */
function withoutVerdict({ figures, ...result }: GuidedResult): GuidedResult | null {
  return figures.length === 0 ? null : { ...result, figures: figures.map((one) => ({ ...one, verdict: null })) };
}
