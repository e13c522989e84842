import { modes } from '@ebbline/shared/contract/http-api';
import { forgetAir } from '../alarm-rules/air-step/air-memory';
import { sampleAirSignals } from '../alarm-rules/air-step/sample-air-signals';
import { unitEntries } from '../alarm-rules/catalogue/catalogue';
import { restDelay } from '../alarm-rules/delays';
import type { UnitEntry } from '../alarm-rules/entry';
import { createFinding, usable, type UnitContext } from '../alarm-rules/judge-context';
import { powerEventEnds } from '../alarm-rules/plant-signs/power-lost';
import { stopWasMeant } from '../alarm-rules/plant-signs/pump-wanted';
import { samplePlant } from '../alarm-rules/plant-signs/sample-plant';
import { followRise, forgetRise } from '../alarm-rules/rise-rate';
import type { ResolvedLimits } from '../alarm-rules/resolve-limits';
import { Verdict } from '../alarm-rules/verdict';
import { findCondition, priorityOfFinding } from './find-condition';
import { foldParent, refoldUnit } from './fold';
import { outlastingEnds } from './fold-earlier';
import { startGraceMs } from './judge-instruments';
import { partsOf } from './part-index';
import type { PipelineState } from './pipeline-state';
import { offInMode } from './off-in-mode';
import { raiseAndClear, type FoldedUnder, type Judged } from './raise-and-clear';
import { followDesign } from './set-aside/follow-design';

/** Steps of a unit that lie further apart are not comparable second by second: windows start anew. */
const longestStepMs = 1500;

const finding = createFinding();

/** By place: 0 = once a unit, 1 = for each branch, 2 = for each plate. */
const kindOfParts = Uint8Array.from(unitEntries, ({ per }) => (per === undefined ? 0 : per === 'branch' ? 1 : 2));

/** Judges every entry of one unit, after its points were derived. */
export function judgeUnit(pipeline: PipelineState, context: UnitContext): void {
  sampleWindows(pipeline, context);
  let changed = false;
  const off = offInMode(modes.indexOf(context.mode), context.modeTold);
  const limits = pipeline.limits[context.unitIndex] as readonly ResolvedLimits[];
  const places = pipeline.unitPlaces[context.unitIndex] as Uint8Array;
  for (let i = 0; i < places.length; i += 1) {
    const place = places[i] as number;
    const isOff = off[place] === 1;
    if (kindOfParts[place] === 0) {
      context.part = -1;
      context.alarm = context.activeFrom + place;
      if (judgeEntry(pipeline, context, place, limits[place] as ResolvedLimits, isOff)) changed = true;
    } else if (judgeParts(pipeline, context, place, limits[place] as ResolvedLimits, isOff)) changed = true;
  }
  if (powerEventEnds(context) || outlastingEnds(pipeline, context.unitIndex) || changed)
    refoldUnit(pipeline, context.unitIndex);
}

function judgeParts(
  pipeline: PipelineState,
  context: UnitContext,
  place: number,
  limits: ResolvedLimits,
  isOff: boolean,
): boolean {
  const { active } = pipeline.delays;
  const first = pipeline.index.parts.of(context.unitIndex, place);
  const count = partsOf(context.unit, kindOfParts[place] === 1 ? 'branch' : 'plate').length;
  let changed = false;
  let any = 0;
  for (let part = 0; part < count; part += 1) {
    const alarm = first + part;
    if (pipeline.applies[alarm] === 0) continue;
    context.part = part;
    context.alarm = alarm;
    if (judgeEntry(pipeline, context, place, limits, isOff)) changed = true;
    any |= active[alarm] as number;
  }
  active[context.activeFrom + place] = any;
  return changed;
}

function sampleWindows(pipeline: PipelineState, context: UnitContext): void {
  const { facilityRise, nowMs, slots, state, supplyRise, unitIndex } = context;
  if (nowMs - (pipeline.steppedMs[unitIndex] as number) > longestStepMs) {
    forgetAir(context.air, unitIndex);
    forgetRise(supplyRise, unitIndex);
    forgetRise(facilityRise, unitIndex);
  }
  pipeline.steppedMs[unitIndex] = nowMs;
  sampleAirSignals(context);
  samplePlant(context);
  followRise(supplyRise, unitIndex, usable(state, slots.supplyTemperature));
  followRise(facilityRise, unitIndex, usable(state, slots.facilitySupplyTemperature));
}

function judgeEntry(
  pipeline: PipelineState,
  context: UnitContext,
  place: number,
  limits: ResolvedLimits,
  isOff: boolean,
): boolean {
  const { alarm } = context;
  const { delays } = pipeline;
  const active = delays.active[alarm] === 1;
  findCondition(context, place, limits, isOff, active, finding);
  if (!active && finding.verdict !== Verdict.yes) {
    if (finding.verdict === Verdict.no) restDelay(delays, alarm);
    return false;
  }
  const moved = active && followModeOfUnit(pipeline, context, isOff);
  return passOn(pipeline, context, place, limits) || moved;
}

/**
 * Only for what is in alarm: that an entry is off concerns nothing else. After a restart nobody knows the mode before the unit was
 * heard: what the mode had off is not told anew for that, until the grace of the start is over.
 */
function followModeOfUnit(pipeline: PipelineState, context: UnitContext, isOff: boolean): boolean {
  const isNew = !context.modeKnown && context.nowMs - pipeline.startedMs < startGraceMs;
  if (isNew && finding.verdict === Verdict.hold) return false;
  const suppressed = isOff && stopWasMeant(context) !== false;
  return followDesign(pipeline, context.alarm, suppressed, finding.verdict, context.mode, context.nowMs);
}

/** Apart from `judgeEntry`: what its closures need is set up on every call. */
function passOn(pipeline: PipelineState, context: UnitContext, place: number, limits: ResolvedLimits): boolean {
  const entry = unitEntries[place] as UnitEntry;
  judged.alarm = context.alarm;
  judged.onDelayMs = limits.onDelayMs;
  judged.offDelayMs = limits.enabled ? limits.offDelayMs : 0;
  judged.reAlarmAfterMs = limits.reAlarmAfterMs;
  judged.unitOfMeasure = finding.unitOfMeasure ?? entry.unitOfMeasure;
  judged.priority = priorityOfFinding(place, finding);
  judged.enabled = limits.enabled;
  judged.detail = entry.detail === undefined ? null : () => entry.detail?.(context) ?? null;
  const foldedUnder: FoldedUnder = (priority) => foldParent(pipeline, context.unitIndex, place, context.part, priority);
  return raiseAndClear(pipeline, judged, finding, foldedUnder, context.nowMs);
}

/** Reused, as nothing keeps it. */
const judged: { -readonly [K in keyof Judged]: Judged[K] } = {
  alarm: -1,
  onDelayMs: 0,
  offDelayMs: 0,
  reAlarmAfterMs: undefined,
  unitOfMeasure: null,
  priority: null,
  enabled: true,
  detail: null,
};
