import type { Mode } from '@ebbline/shared/contract/http-api';
import type { CompiledSite, CompiledUnit, Holder } from '../site/compiled-site';
import { badBits } from '../slots/quality-reasons';
import type { SlotState } from '../slots/slot-state';
import type { AirMemory } from './air-step/air-memory';
import { unitEntryPlace, type UnitEntryId } from './entry-ids';
import type { FollowMemory } from './follow-memory';
import type { OpenPermits } from './open-permits';
import type { PlantMemory } from './plant-signs/plant-memory';
import { riseRate, type RiseMemory } from './rise-rate';
import type { RuleMemory } from './rule-memory';
import type { UnitSlots } from './unit-slots';

export { clearFinding, createFinding, type Finding } from './finding';

/** What a rule may look at, for one unit and tick. One object serves all units in turn: nothing is kept in it. */
export interface UnitContext {
  site: CompiledSite;
  state: SlotState;
  unit: CompiledUnit;
  unitIndex: number;
  holder: Holder;
  slots: UnitSlots;
  /** By index into `site.units`, for what is compared with the other units of the loop. */
  allSlots: readonly UnitSlots[];
  /** Branch or plate that is judged now; −1 for an entry of the whole unit. */
  part: number;
  nowMs: number;
  mode: Mode;
  /** A mode point said so; else it is inferred from feedback, or not known at all. */
  modeTold: boolean;
  modeKnown: boolean;
  air: AirMemory;
  supplyRise: RiseMemory;
  facilityRise: RiseMemory;
  plant: PlantMemory;
  permits: OpenPermits;
  /** How gauge sensors go with the barometer, two a unit. */
  follow: FollowMemory;
  memory: RuleMemory;
  /** The alarm that is judged: whose cells of `memory` are this rule's. */
  alarm: number;
  /** 1 = in alarm, by place in `unitEntryIds` from `activeFrom` on; for entries a part, 1 where one of them is. */
  active: Uint8Array;
  activeFrom: number;
}

export const isActive = (context: UnitContext, entry: UnitEntryId): boolean =>
  context.active[context.activeFrom + unitEntryPlace[entry]] === 1;

/** What this rule kept in one of its cells; NaN before the first time. */
export const recall = (context: UnitContext, cell: number): number => context.memory.get(context.alarm, cell);

export const keep = (context: UnitContext, cell: number, value: number): void =>
  context.memory.set(context.alarm, cell, value);

/** The value of a slot that may be used; NaN where it is bad or there is no such point. */
export function usable(state: SlotState, slot: number): number {
  return slot < 0 || ((state.reasons[slot] as number) & badBits) !== 0 ? Number.NaN : (state.value[slot] as number);
}

/** Expanded uncertainty (k = 2) of a slot; 0 where an input states no accuracy: then no guard can be kept. */
export function guard(state: SlotState, slot: number): number {
  const uncertainty = slot < 0 ? Number.NaN : (state.expandedUncertainty[slot] as number);
  return Number.isNaN(uncertainty) ? 0 : uncertainty;
}

/** How fast the supply of the unit warms, K/s; NaN until that is known. */
export const supplyRiseRate = (context: UnitContext): number =>
  rateOfPoint(context, context.supplyRise, context.slots.supplyTemperature);

/** The same of the facility water that comes in. */
export const facilityRiseRate = (context: UnitContext): number =>
  rateOfPoint(context, context.facilityRise, context.slots.facilitySupplyTemperature);

const rateOfPoint = ({ site, unitIndex }: UnitContext, memory: RiseMemory, slot: number): number =>
  slot < 0 ? Number.NaN : riseRate(memory, unitIndex, site.slots.periodMs[slot] as number);

/** The node, branch or wall that decides a slot's value. */
export function placeOf(state: SlotState, holder: Holder, slot: number): string | null {
  const place = slot < 0 ? -1 : (state.where[slot] as number);
  // A look-up at −1 is no look-up in an array: it costs as much as the rest of a rule.
  return place < 0 ? null : (holder.places[place] ?? null);
}
