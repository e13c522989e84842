import { pointPattern } from '@ebbline/shared/contract/point-table';
import type { CompiledSite, CompiledUnit } from '../site/compiled-site';
import type { SlotState } from '../slots/slot-state';
import { derivedPointsOfHall, derivedPointsOfUnit } from './derived-points';
import type { DerivedPointText } from './derived-point';
import { explainMeasured } from './explain-measured';
import { inputsOfSlot } from './inputs-of-slot';
import { deriveMemoryOf } from './memory/memory-of-state';
import { sampleMemory } from './sample-memory';
import { siteFigures } from './site-figures';
import { UncertaintyBudget, type BudgetPart } from './uncertainty-budget';
import { UnitFrame } from './unit-frame';
import { unitPlan } from './unit-plan';

/** What stands behind the value of one slot. */
export interface ExplainedPoint {
  /** A copy of the site's values, in which the value was worked out anew. */
  readonly state: SlotState;
  readonly slot: number;
  readonly formula: string | null;
  readonly source: string | null;
  readonly inputSlots: readonly number[];
  readonly siteFigures: readonly { readonly name: string; readonly value: number; readonly unitOfMeasure: string }[];
  readonly parts: readonly BudgetPart[];
}

/**
 * Works one point of a unit, or of its hall, out anew and writes down what its uncertainty consists of. Everything happens in a
 * copy of the values, and what is remembered is only read: the step that it belongs to has its samples already. `stopped`
 * as in `deriveUnit`.
 */
export function explainPoint(
  site: CompiledSite,
  live: SlotState,
  unitIndex: number,
  slot: number,
  stopped: boolean,
): ExplainedPoint {
  const state = copyOf(live);
  const id = site.slots.pointId[slot] ?? '';
  if (site.slots.measured[slot] === 1)
    return {
      state,
      slot,
      ...nothing,
      parts: explainMeasured(site, state, slot, unitPlan(site, unitIndex).ambientSlot),
    };
  const plan = unitPlan(site, unitIndex);
  const pattern = pointPattern(id);
  const budget = new UncertaintyBudget();
  const ofHall = derivedPointsOfHall.find((point) => point.id === pattern);
  const hall = site.halls[plan.unit.hall];
  const ofUnit = derivedPointsOfUnit.find((point) => point.id === pattern);
  if (ofHall !== undefined && hall !== undefined)
    ofHall.derive(site, state, hall, live.acceptedMs[slot] ?? Number.NaN, { budget });
  else if (ofUnit !== undefined && (ofUnit.applies?.(plan) ?? true))
    ofUnit.derive(frameOfLastStep(site, live, state, unitIndex, stopped, budget));
  const text = ofHall ?? ofUnit;
  if (text === undefined) return { state, slot, ...nothing, parts: [] };
  return { state, slot, ...behind(site, unitIndex, slot, text), parts: budget.partsOf(slot) };
}

/** A frame of its own, with the inputs as they are now. At the time of the last step nothing is remembered anew. */
function frameOfLastStep(
  site: CompiledSite,
  live: SlotState,
  copy: SlotState,
  unitIndex: number,
  stopped: boolean,
  budget: UncertaintyBudget,
): UnitFrame {
  const memory = deriveMemoryOf(site, live);
  const steppedMs = memory.steppedAt(unitIndex);
  const frame = new UnitFrame(site, unitPlan(site, unitIndex));
  frame.memory = Number.isNaN(steppedMs) ? null : memory;
  frame.read(copy, steppedMs, stopped);
  sampleMemory(frame);
  frame.budget = budget;
  frame.tally.budget = budget;
  return frame;
}

const nothing = { formula: null, source: null, inputSlots: [], siteFigures: [] } as const;

function behind(site: CompiledSite, unitIndex: number, slot: number, text: DerivedPointText) {
  const { unit } = unitPlan(site, unitIndex);
  return {
    formula: text.formula ?? null,
    source: sourceOf(unit, text),
    inputSlots: inputsOfSlot(site, unitIndex, slot),
    siteFigures: (text.siteFigures ?? []).flatMap((name) => {
      const value = siteFigures[name].of(unit);
      return typeof value === 'number' && Number.isFinite(value)
        ? [{ name, value, unitOfMeasure: siteFigures[name].unit }]
        : [];
    }),
  };
}

function sourceOf(unit: CompiledUnit, { source, choice }: DerivedPointText): string | null {
  if (source === undefined || choice === undefined) return source ?? null;
  return `${source}; ${choice(unit)}`;
}

const copyOf = (state: SlotState): SlotState => ({
  value: state.value.slice(),
  sourceMs: state.sourceMs.slice(),
  acceptedMs: state.acceptedMs.slice(),
  unchangedSinceMs: state.unchangedSinceMs.slice(),
  reasons: state.reasons.slice(),
  expandedUncertainty: state.expandedUncertainty.slice(),
  degreesOfFreedom: state.degreesOfFreedom.slice(),
  where: state.where.slice(),
});
