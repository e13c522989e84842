import type { GuidedGiven } from '@ebbline/shared/contract/guided-test';
import { usable } from '../../alarm-rules/judge-context';
import { standardUncertainty } from '../../derive/standard-uncertainty';
import { unitPlan, type UnitPlan } from '../../derive/unit-plan';
import { modeOfUnit, type ModeFound } from '../mode-of-unit';
import type { PipelineState } from '../pipeline-state';
import type { StepRecord } from './guided-record';

/** What a test may look at: one unit, now, and what was chosen for the test. */
export interface GuidedView {
  readonly pipeline: PipelineState;
  readonly plan: UnitPlan;
  readonly mode: ModeFound;
  readonly settings: GuidedGiven;
  /** Of the test that goes on, with what they measured; none before its start. */
  readonly steps: readonly StepRecord[];
}

export function guidedView(
  pipeline: PipelineState,
  unitIndex: number,
  settings: GuidedGiven,
  steps: readonly StepRecord[] = [],
): GuidedView {
  const slots = pipeline.unitSlots[unitIndex];
  const mode =
    slots === undefined ? ({ mode: 'running', known: false, told: false } as const) : modeOfUnit(pipeline.state, slots);
  return { pipeline, plan: unitPlan(pipeline.site, unitIndex), mode, settings, steps };
}

/** Slot of a point of the unit; −1 where it has none. */
export const slotOf = ({ plan }: GuidedView, point: string): number => plan.holder.slotOf.get(point) ?? -1;

export const has = (view: GuidedView, point: string): boolean => slotOf(view, point) >= 0;

/** Value that may be used, SI or °C; NaN where it is bad or there is no such point. */
export const valueOf = (view: GuidedView, point: string): number => usable(view.pipeline.state, slotOf(view, point));

/** Standard uncertainty as the site file states the accuracy, or as it was derived; NaN where none is stated. */
export const uOf = (view: GuidedView, point: string): number =>
  standardUncertainty(view.pipeline.site.slots, view.pipeline.state, slotOf(view, point));

/** The hall's barometer, Pa; NaN where there is none that may be used. */
export const ambientOf = ({ pipeline, plan }: GuidedView): number => usable(pipeline.state, plan.ambientSlot);

export const ambientU = ({ pipeline, plan }: GuidedView): number =>
  standardUncertainty(pipeline.site.slots, pipeline.state, plan.ambientSlot);

/** A chosen number, in the unit of measure in which it was asked for; NaN where it was not. */
export function chosen({ settings }: GuidedView, key: string): number {
  const given = settings[key];
  return typeof given === 'number' ? given : Number.NaN;
}
