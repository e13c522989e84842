import type { Mode } from '@ebbline/shared/contract/http-api';
import type { CompiledSite, CompiledUnit, Holder } from '../site/compiled-site';
import { badBits } from '../slots/quality-reasons';
import type { SlotState } from '../slots/slot-state';
import type { AirMemory } from './air-step/air-memory';
import { unitEntryPlace, type UnitEntryId } from './entry-ids';
import type { SecondRings } from './second-rings';
import type { UnitSlots } from './unit-slots';
import { Verdict } from './verdict';

/** What a rule may look at, for one unit and tick. One object serves all units in turn: nothing is kept in it. */
export interface UnitContext {
  site: CompiledSite;
  state: SlotState;
  unit: CompiledUnit;
  unitIndex: number;
  holder: Holder;
  slots: UnitSlots;
  nowMs: number;
  mode: Mode;
  /** A mode point said so; else it is inferred from feedback, or not known at all. */
  modeTold: boolean;
  modeKnown: boolean;
  air: AirMemory;
  /** Supply temperature of every unit, one signal a unit. */
  supplyTemperature: SecondRings;
  /** 1 = in alarm, by place in `unitEntryIds` from `activeFrom` on. */
  active: Uint8Array;
  activeFrom: number;
}

/** What a rule found. Written anew by each rule. */
export interface Finding {
  verdict: Verdict;
  /** In `unitOfMeasure`; NaN where there is none to show. */
  value: number;
  limit: number;
  /** UCUM code, where it is another than the entry's. */
  unitOfMeasure: string | null;
  where: string | null;
  /** The signs that make the entry worse are there. */
  worse: boolean;
}

export const createFinding = (): Finding => ({
  verdict: Verdict.hold,
  value: Number.NaN,
  limit: Number.NaN,
  unitOfMeasure: null,
  where: null,
  worse: false,
});

export function clearFinding(finding: Finding): void {
  finding.verdict = Verdict.hold;
  finding.value = Number.NaN;
  finding.limit = Number.NaN;
  finding.unitOfMeasure = null;
  finding.where = null;
  finding.worse = false;
}

export const isActive = (context: UnitContext, entry: UnitEntryId): boolean =>
  context.active[context.activeFrom + unitEntryPlace[entry]] === 1;

/** The value of a slot that may be used; NaN where it is bad or there is no such point. */
export function usable(state: SlotState, slot: number): number {
  return slot < 0 || ((state.reasons[slot] as number) & badBits) !== 0 ? Number.NaN : (state.value[slot] as number);
}

/** Expanded uncertainty (k = 2) of a slot; 0 where an input states no accuracy: then no guard can be kept. */
export function guard(state: SlotState, slot: number): number {
  const uncertainty = slot < 0 ? Number.NaN : (state.expandedUncertainty[slot] as number);
  return Number.isNaN(uncertainty) ? 0 : uncertainty;
}

/** The node, branch or wall that decides a slot's value. */
export function placeOf(state: SlotState, holder: Holder, slot: number): string | null {
  return slot < 0 ? null : (holder.places[state.where[slot] as number] ?? null);
}
