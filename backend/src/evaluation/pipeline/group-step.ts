import { groupEntries } from '../alarm-rules/catalogue/catalogue';
import { restDelay } from '../alarm-rules/delays';
import type { GroupEntry } from '../alarm-rules/entry';
import { clearFinding, createFinding } from '../alarm-rules/finding';
import type { GroupContext } from '../alarm-rules/group-context';
import { priorityOf } from '../alarm-rules/priority';
import { resolveLimits, type ResolvedLimits } from '../alarm-rules/resolve-limits';
import { Verdict } from '../alarm-rules/verdict';
import type { CompiledSite } from '../site/compiled-site';
import type { PipelineState } from './pipeline-state';
import { raiseAndClear, unfolded } from './raise-and-clear';

const finding = createFinding();

/** Judges every entry of loops and halls, once a second. */
export function groupStep(pipeline: PipelineState, nowMs: number): void {
  pipeline.groupSteppedMs = nowMs;
  let place = 0;
  for (const entry of groupEntries) {
    const groups = entry.per === 'loop' ? pipeline.site.loops.length : pipeline.site.halls.length;
    for (let group = 0; group < groups; group += 1, place += 1)
      judgeGroup(pipeline, entry, group, pipeline.index.ofGroup(place), nowMs);
  }
}

function judgeGroup(pipeline: PipelineState, entry: GroupEntry, group: number, alarm: number, nowMs: number): void {
  const context = contextOf(pipeline);
  fillGroupContext(pipeline, context, entry, group, alarm, nowMs);
  const limits = limitsOf(pipeline.site, entry, context.units);
  const active = pipeline.delays.active[alarm] === 1;
  clearFinding(finding);
  if (!limits.enabled || context.units.length === 0) finding.verdict = Verdict.no;
  else entry.judge(context, limits, active, finding);
  if (!active && finding.verdict !== Verdict.yes) {
    if (finding.verdict === Verdict.no) restDelay(pipeline.delays, alarm);
    return;
  }
  const judged = {
    alarm,
    onDelayMs: limits.onDelayMs,
    offDelayMs: limits.enabled ? limits.offDelayMs : 0,
    reAlarmAfterMs: limits.reAlarmAfterMs,
    unitOfMeasure: finding.unitOfMeasure ?? entry.unitOfMeasure,
    priority: priorityOf(entry.severity, entry.timeToRespondS),
    enabled: limits.enabled,
    detail: entry.detail === undefined ? null : () => entry.detail?.(context) ?? null,
  };
  raiseAndClear(pipeline, judged, finding, unfolded, nowMs);
}

const contexts = new WeakMap<PipelineState, GroupContext>();

function contextOf(pipeline: PipelineState): GroupContext {
  const known = contexts.get(pipeline);
  if (known !== undefined) return known;
  const made = createGroupContext(pipeline);
  contexts.set(pipeline, made);
  return made;
}

export const createGroupContext = (pipeline: PipelineState): GroupContext => ({
  site: pipeline.site,
  state: pipeline.state,
  group: -1,
  units: [],
  unitSlots: pipeline.unitSlots,
  hallMeans: pipeline.hallMeans,
  unitMeans: pipeline.unitMeans,
  nowMs: Number.NaN,
  memory: pipeline.memory,
  plant: pipeline.plant,
  alarm: -1,
});

export function fillGroupContext(
  { site }: PipelineState,
  context: GroupContext,
  entry: GroupEntry,
  group: number,
  alarm: number,
  nowMs: number,
): void {
  context.group = group;
  context.units = (entry.per === 'loop' ? site.loops : site.halls)[group]?.units ?? [];
  context.nowMs = nowMs;
  context.alarm = alarm;
}

/** A loop or a hall has the limits of its first unit: the site file states limits by site, hall and unit. */
const known = new WeakMap<CompiledSite, Map<string, ResolvedLimits>>();

function limitsOf(site: CompiledSite, entry: GroupEntry, units: readonly number[]): ResolvedLimits {
  let ofSite = known.get(site);
  if (ofSite === undefined) known.set(site, (ofSite = new Map<string, ResolvedLimits>()));
  const first = units[0] ?? -1;
  const id: string = entry.id;
  const key = `${id}:${first}`;
  let limits = ofSite.get(key);
  if (limits === undefined) {
    limits = resolveLimits(entry.defaults, site.units[first]?.limits.get(entry.id));
    ofSite.set(key, limits);
  }
  return limits;
}
