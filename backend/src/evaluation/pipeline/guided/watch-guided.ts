import type { GuidedEnd } from '@ebbline/shared/contract/guided-test';
import type { PipelineState } from '../pipeline-state';
import { alarmInTheWay, shutGates } from './guided-gates';
import type { GuidedRecord } from './guided-record';
import { asBegun, measurePlan } from './guided-steps';
import { guidedTable } from './guided-table';
import { guidedView } from './guided-view';
import type { Measuring } from './guided-tests';
import { measuredOf, mayEnd } from './measured-of';
import { breakOff } from './break-off';
import { movedOn } from './move-on';

/** So long a gate may be shut before the test is broken off, ms: one bad sample is no loss. Own rule. */
const shutForMs = 5000;
/** So long a reading may be missing before the test is broken off, ms. Own rule. */
const badForMs = 30_000;

/** The test of one unit, once a second: takes a sample, goes to its next step, or ends it. */
export function watchGuided(pipeline: PipelineState, unitIndex: number, nowMs: number): void {
  if (pipeline.guided.open.size === 0) return;
  const run = pipeline.guided.open.get(pipeline.site.units[unitIndex]?.id ?? '');
  if (run === undefined) return;
  const { record, measuring } = run;
  const test = guidedTable[record.kind];
  const alarm = alarmInTheWay(pipeline, record.unit, test.expectedAlarms);
  if (alarm !== null) endByItself(pipeline, record, 'alarm', alarm.message, nowMs);
  else if (measuring !== null) measure(pipeline, unitIndex, record, measuring, nowMs);
  else if (test.watchedWhileAsked === true) {
    const [shut] = shutGates(guidedView(pipeline, unitIndex, record.settings, record.steps), test);
    if (shut !== undefined) endByItself(pipeline, record, 'gateLost', shut.message, nowMs);
  }
}

/** Ends a test that nobody cancelled, without a verdict; told with the next changes. */
export function endByItself(
  pipeline: PipelineState,
  record: GuidedRecord,
  endedFor: GuidedEnd,
  said: string | null,
  nowMs: number,
): void {
  const { guided } = pipeline;
  const test = breakOff(pipeline, record, { endedFor, said, by: null }, nowMs);
  guided.put(test, nowMs, null);
  guided.changes.push({ what: 'ended', test, atMs: nowMs, actor: null, station: null, comment: null });
}

function measure(
  pipeline: PipelineState,
  unitIndex: number,
  record: GuidedRecord,
  measuring: Measuring,
  nowMs: number,
): void {
  const test = guidedTable[record.kind];
  const view = guidedView(pipeline, unitIndex, record.settings, record.steps);
  const wanted = measurePlan(test, view, record);
  const end = (endedFor: GuidedEnd, said: string | null): void => endByItself(pipeline, record, endedFor, said, nowMs);
  if (wanted === null) {
    end('configuration', null);
    return;
  }
  const plan = asBegun(wanted, measuring.readings);
  const values = plan.readings.map(({ read }) => read(view));
  measuring.series.look(values);
  const [shut] = shutGates(view, test);
  if (shut === undefined) measuring.shutMs = Number.NaN;
  else {
    if (Number.isNaN(measuring.shutMs)) measuring.shutMs = nowMs;
    if (nowMs - measuring.shutMs >= (test.graceMs ?? shutForMs)) end('gateLost', shut.message);
    return;
  }
  if (values.some(Number.isNaN)) {
    const missing = plan.readings.filter((_, i) => Number.isNaN(values[i])).map(({ title }) => title);
    if (nowMs - measuring.knownMs > badForMs) end('inputBad', `${missing.join(', ')}: bad or stale`);
    return;
  }
  measuring.knownMs = nowMs;
  const seconds = (nowMs - measuring.beganMs) / 1000;
  measuring.series.push(seconds, values);
  if (mayEnd(plan, measuring.series, seconds) && (plan.until?.(view) ?? true)) {
    const next = movedOn(test, view, record, { measured: measuredOf(plan, measuring.series, seconds) }, nowMs);
    pipeline.guided.put(next, nowMs, measurePlan(test, view, next));
    const what = next.state === 'ended' ? 'ended' : 'measured';
    pipeline.guided.changes.push({ what, test: next, atMs: nowMs, actor: null, station: null, comment: null });
  } else if (seconds >= plan.mostS)
    end(
      'neverSteady',
      `${plan.until === undefined ? 'not steady' : 'what was waited for did not come'} within ${plan.mostS} s`,
    );
}
