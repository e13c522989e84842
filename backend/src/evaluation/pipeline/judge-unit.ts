import { forgetAir } from '../alarm-rules/air-step/air-memory';
import { sampleAirSignals } from '../alarm-rules/air-step/sample-air-signals';
import { unitEntries } from '../alarm-rules/catalogue/catalogue';
import { unitEntryPlace } from '../alarm-rules/entry-ids';
import type { UnitEntry } from '../alarm-rules/entry';
import { foldsUnder } from '../alarm-rules/folding';
import { clearFinding, createFinding, usable, type UnitContext } from '../alarm-rules/judge-context';
import { priorityOfEntry } from '../alarm-rules/priority-of-entry';
import type { ResolvedLimits } from '../alarm-rules/resolve-limits';
import { Verdict } from '../alarm-rules/verdict';
import type { PipelineState } from './pipeline-state';
import { raiseAndClear, type Judged } from './raise-and-clear';

/** Steps of a unit that lie further apart are not comparable second by second: windows start anew. */
const longestStepMs = 1500;

const finding = createFinding();

const plainPriority = unitEntries.map((entry) => priorityOfEntry(entry, false));
const worsePriority = unitEntries.map((entry) => priorityOfEntry(entry, true));

/** Judges every entry of one unit, after its points were derived. */
export function judgeUnit(pipeline: PipelineState, context: UnitContext): void {
  sampleWindows(pipeline, context);
  let changed = false;
  for (let place = 0; place < unitEntries.length; place += 1) {
    if (judgeEntry(pipeline, context, place)) changed = true;
  }
  if (changed) refold(pipeline, context);
}

function sampleWindows(pipeline: PipelineState, context: UnitContext): void {
  const { unitIndex, nowMs, supplyTemperature } = context;
  if (nowMs - (pipeline.steppedMs[unitIndex] as number) > longestStepMs) {
    forgetAir(context.air, unitIndex);
    supplyTemperature.forget(unitIndex, 1);
  }
  pipeline.steppedMs[unitIndex] = nowMs;
  sampleAirSignals(context);
  supplyTemperature.push(unitIndex, usable(context.state, context.slots.supplyTemperature));
}

function judgeEntry(pipeline: PipelineState, context: UnitContext, place: number): boolean {
  const entry = unitEntries[place] as UnitEntry;
  const limits = (pipeline.limits[context.unitIndex] as readonly ResolvedLimits[])[place] as ResolvedLimits;
  const alarm = context.activeFrom + place;
  clearFinding(finding);
  if (!limits.enabled || isOff(entry, context)) finding.verdict = Verdict.no;
  else entry.judge(context, limits, pipeline.delays.active[alarm] === 1, finding);
  if (finding.verdict === Verdict.no && pipeline.delays.active[alarm] === 0) {
    pipeline.delays.trueSinceMs[alarm] = Number.NaN;
    return false;
  }
  judged.alarm = alarm;
  judged.onDelayMs = limits.onDelayMs;
  judged.offDelayMs = limits.enabled ? limits.offDelayMs : 0;
  judged.unitOfMeasure = finding.unitOfMeasure ?? entry.unitOfMeasure;
  judged.priority = (finding.worse ? worsePriority : plainPriority)[place] ?? null;
  judged.enabled = limits.enabled;
  return raiseAndClear(pipeline, judged, finding, foldParent(pipeline, context, entry), context.nowMs);
}

/** Reused, as nothing keeps it. */
const judged: { -readonly [K in keyof Judged]: Judged[K] } = {
  alarm: -1,
  onDelayMs: 0,
  offDelayMs: 0,
  unitOfMeasure: null,
  priority: null,
  enabled: true,
};

const isOff = (entry: UnitEntry, context: UnitContext): boolean =>
  (context.modeTold || entry.offWhenInferred) && entry.offInModes.includes(context.mode);

function foldParent(pipeline: PipelineState, context: UnitContext, entry: UnitEntry): string | null {
  const parents = foldsUnder[entry.id];
  if (parents === undefined) return null;
  for (const parent of parents) {
    const alarm = context.activeFrom + unitEntryPlace[parent];
    if (pipeline.delays.active[alarm] === 1) return pipeline.index.identity(alarm).alarm;
  }
  return null;
}

function refold(pipeline: PipelineState, context: UnitContext): void {
  for (const entry of unitEntries) {
    if (foldsUnder[entry.id] === undefined) continue;
    pipeline.book.fold(context.activeFrom + unitEntryPlace[entry.id], foldParent(pipeline, context, entry));
  }
}
