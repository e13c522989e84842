import type { TightnessEnd } from '@ebbline/shared/contract/tightness-test';
import { coverageFactor } from '@ebbline/shared/uncertainty/combine';
import { readingUncertainty } from '../../derive/reading-uncertainty';
import { unitPlan } from '../../derive/unit-plan';
import type { PipelineState } from '../pipeline-state';
import type { TightnessRecord } from '../tightness-record';
import { riseResult, steadinessOf, verdictOf, type RiseAccuracies } from './rise-result';
import type { TightnessRun } from './tightness-tests';

/** Ends after which what was measured still counts. */
const whole: readonly TightnessEnd[] = ['completed', 'endedByPerson'];

/** The record of a running test with what it has found so far. */
export function soFar(pipeline: PipelineState, { record, series }: TightnessRun): TightnessRecord {
  const unitIndex = pipeline.site.units.findIndex(({ id }) => id === record.unit);
  const result = unitIndex < 0 ? null : riseResult(series, accuraciesOf(pipeline, unitIndex, record));
  return {
    ...record,
    samples: series.samples,
    result,
    steadiness: steadinessOf(series, record.acceptanceLimitM3PerS),
  };
}

/** The same, ended. A test that was broken off keeps what it measured, without a verdict. */
export function ended(
  pipeline: PipelineState,
  run: TightnessRun,
  endedFor: TightnessEnd,
  endedBy: string | null,
  endedMs: number,
): TightnessRecord {
  const record = soFar(pipeline, run);
  const { result, steadiness, acceptanceLimitM3PerS } = record;
  const verdict =
    result === null || !whole.includes(endedFor) ? null : verdictOf(result, steadiness, acceptanceLimitM3PerS);
  return { ...record, verdict, endedFor, endedBy, endedMs };
}

/** As the site file states them; what is not stated was refused at the start, and is told as nothing where it is lost since. */
function accuraciesOf(
  { site, state }: PipelineState,
  unitIndex: number,
  { begin, dry }: TightnessRecord,
): RiseAccuracies {
  const { slot, fluid } = unitPlan(site, unitIndex);
  const u = (id: 'separator.pressure' | 'return.temperature' | 'separator.level'): number => {
    const expanded = slot[id] < 0 ? Number.NaN : readingUncertainty(site, state, slot[id]);
    return Number.isNaN(expanded) ? 0 : expanded / coverageFactor;
  };
  return {
    pressurePa: u('separator.pressure'),
    temperatureK: u('return.temperature'),
    levelM: begin.areaM2 === 0 ? 0 : u('separator.level'),
    areaM2: begin.areaM2,
    dry,
    fluid,
  };
}
