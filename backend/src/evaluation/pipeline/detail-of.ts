import { systemEntries, unitEntries } from '../alarm-rules/catalogue/catalogue';
import type { UnitContext } from '../alarm-rules/judge-context';
import { createContext, fillContext } from './fill-context';
import { createGroupContext, fillGroupContext } from './group-step';
import type { ModeFound } from './mode-of-unit';
import type { PipelineState } from './pipeline-state';

const contexts = new WeakMap<PipelineState, UnitContext>();

/**
 * What is known now of a standing alarm or alert: told anew while its condition lasts, as it was told last once that has
 * gone. Null where its entry has nothing to say, or no such alarm stands.
 */
export function detailOf(pipeline: PipelineState, alarm: string): string | null {
  const index = pipeline.book.indexOfName(alarm);
  if (index === undefined) return null;
  const record = pipeline.book.record(index);
  const fresh = record?.active === true ? detailNow(pipeline, index) : null;
  return fresh ?? record?.detail ?? null;
}

/** The same of a place that is in alarm. */
export function detailNow(pipeline: PipelineState, index: number): string | null {
  const judged = pipeline.index.judgedOf(index);
  if (judged !== null) {
    const entry = unitEntries[judged.place];
    if (entry?.detail === undefined) return null;
    let context = contexts.get(pipeline);
    if (context === undefined) contexts.set(pipeline, (context = createContext(pipeline)));
    const nowMs = pipeline.steppedMs[judged.unit] as number;
    if (Number.isNaN(nowMs)) return null;
    fillContext(pipeline, context, judged.unit, pipeline.modes[judged.unit] as ModeFound, nowMs);
    context.part = judged.part;
    context.alarm = index;
    return entry.detail(context);
  }
  const system = systemEntries[pipeline.index.systemPlaceOf(index)];
  if (system !== undefined) return pipeline.system === null ? null : system.detail(pipeline.system);
  const group = pipeline.index.groupOf(index);
  if (group === null) return null;
  const { entry } = group;
  if (entry.detail === undefined) return null;
  const context = createGroupContext(pipeline);
  fillGroupContext(pipeline, context, entry, group.group, index, pipeline.groupSteppedMs);
  return entry.detail(context);
}
