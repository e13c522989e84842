import type { GuidedEnd, GuidedFigure, GuidedResult, GuidedVerdict } from '@ebbline/shared/contract/guided-test';
import type { GuidedRecord, StepRecord } from './guided-record';
import type { GuidedTestKind } from './guided-test';
import type { GuidedView } from './guided-view';

/** The record with the present step done, standing at the next one; behind the last it is judged and ends. */
export function movedOn(
  test: GuidedTestKind,
  view: GuidedView,
  record: GuidedRecord,
  done: Partial<StepRecord>,
  nowMs: number,
): GuidedRecord {
  const steps = record.steps.map((step, i) => (i === record.at ? { ...step, ...done, doneMs: nowMs } : step));
  const at = record.at + 1;
  const next = steps[at];
  if (next !== undefined) return { ...record, steps, at, state: next.kind };
  const result = test.judge(view, steps);
  const by = { endedFor: 'completed', endedBy: null, endedMs: nowMs } as const;
  return { ...record, steps, at, state: 'ended', result, verdict: verdictOf(result), ...by };
}

/** Broken off: what was measured stays, without a verdict. */
export const brokenOff = (
  record: GuidedRecord,
  endedFor: GuidedEnd,
  endedSaid: string | null,
  endedBy: string | null,
  endedMs: number,
): GuidedRecord => ({ ...record, state: 'ended', endedFor, endedSaid, endedBy, endedMs });

/** One figure that fails, fails all; one that is not decided leaves all undecided; nothing judged decides nothing. */
export function verdictOf({ figures }: GuidedResult): GuidedVerdict {
  const verdicts = figures.map(({ verdict }) => verdict).filter((one) => one !== null);
  if (verdicts.includes('fails')) return 'fails';
  return verdicts.length === 0 || verdicts.includes('notDecided') ? 'notDecided' : 'passes';
}

/** The whole interval has to lie on one side of each limit (guarded acceptance and rejection, JCGM 106:2012, 8.3). */
export function judged({
  value,
  expandedUncertainty: spread,
  low,
  high,
}: Pick<GuidedFigure, 'value' | 'expandedUncertainty' | 'low' | 'high'>): GuidedVerdict {
  const [least, most] = [value - spread, value + spread];
  if ((high !== null && least > high) || (low !== null && most < low)) return 'fails';
  const within = (high === null || most <= high) && (low === null || least >= low);
  return within ? 'passes' : 'notDecided';
}
