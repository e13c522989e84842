import type { GuidedAsked, GuidedLive, GuidedRefusal } from '@ebbline/shared/contract/guided-test';
import type { PipelineState } from '../pipeline-state';
import { otherTest, shutGates } from './guided-gates';
import type { GuidedRecord } from './guided-record';
import { asBegun, measurePlan } from './guided-steps';
import { guidedTable } from './guided-table';
import type { GuidedTestKind } from './guided-test';
import { guidedView, type GuidedView } from './guided-view';
import { usualOf } from './check-asked';
import { driftOf, isSteady } from './steadiness';

/** So many of the newest means are drawn. */
const drawnMeans = 240;

/** What an open test shows now: how steady it is, and what is in the way of its next step. */
export interface GuidedNow {
  readonly live: GuidedLive | null;
  readonly refusals: readonly GuidedRefusal[];
}

export function guidedNow(pipeline: PipelineState, record: GuidedRecord, nowMs: number): GuidedNow {
  const unitIndex = pipeline.site.units.findIndex(({ id }) => id === record.unit);
  if (record.state === 'ended' || unitIndex < 0) return { live: null, refusals: [] };
  const test = guidedTable[record.kind];
  const view = guidedView(pipeline, unitIndex, record.settings, record.steps);
  const refusals = shutGates(view, test);
  const measuring = pipeline.guided.open.get(record.unit)?.measuring ?? null;
  const wanted = measurePlan(test, view, record);
  if (measuring === null || wanted === null) return { live: null, refusals };
  const plan = asBegun(wanted, measuring.readings);
  const { series, beganMs } = measuring;
  const { windowS, blockS } = plan;
  const watched = plan.readings.flatMap(({ reading, title, quantity, allowedDrift }, i) => {
    if (allowedDrift === null) return [];
    const drift = driftOf(series, i, windowS, blockS);
    const known = Number.isFinite(drift.drift);
    return {
      reading,
      title,
      quantity,
      drift: known ? drift.drift : null,
      driftUncertainty: known ? drift.expanded : null,
      allowed: allowedDrift,
      steady: known && isSteady(drift, allowedDrift),
      seconds: series.atS.slice(-drawnMeans),
      means: (series.means[i] ?? []).slice(-drawnMeans),
    };
  });
  const seconds = Math.max(0, (nowMs - beganMs) / 1000);
  const live = { seconds, samples: series.samples, window: windowS, least: plan.leastS, most: plan.mostS, watched };
  return { live, refusals };
}

/** What is in the way of a test that nobody has begun, with everything chosen as usual. */
export function guidedRefusals(
  pipeline: PipelineState,
  unitIndex: number,
  test: GuidedTestKind,
): readonly GuidedRefusal[] {
  const other = otherTest(pipeline, pipeline.site.units[unitIndex]?.id ?? '');
  if (other !== null) return [other];
  return shutGates(usualView(pipeline, unitIndex, test), test);
}

/** The steps of such a test behind its cautions, in words. */
export const guidedSteps = (
  pipeline: PipelineState,
  unitIndex: number,
  test: GuidedTestKind,
): readonly { readonly id: string; readonly title: string; readonly text: string }[] =>
  test.steps(usualView(pipeline, unitIndex, test)).map(({ id, title, text }) => ({ id, title, text }));

/** What such a test asks, with what can be chosen at this unit. */
export function guidedAsks(pipeline: PipelineState, unitIndex: number, test: GuidedTestKind): readonly GuidedAsked[] {
  const choices = test.choices?.(usualView(pipeline, unitIndex, test)) ?? {};
  return test.asks.map((asked) => {
    const offered = choices[asked.key];
    return offered === undefined ? asked : { ...asked, choices: offered.map((one) => ({ ...one })) };
  });
}

function usualView(pipeline: PipelineState, unitIndex: number, test: GuidedTestKind): GuidedView {
  return guidedView(pipeline, unitIndex, usualOf(test.asks));
}
