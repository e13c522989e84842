import type { CompiledSite } from '../site/compiled-site';
import { reasonBit } from '../slots/quality-reasons';
import type { SlotState } from '../slots/slot-state';
import { derivedPointsOfUnit } from './derived-points';
import { deriveMemoryOf } from './memory/memory-of-state';
import { sampleMemory } from './sample-memory';
import { readUnitFrame, type UnitFrame } from './unit-frame';
import type { UnitPlan } from './unit-plan';
import { slotsOfPoint } from './slots-of-point';

/**
 * Works out every derived point of a unit from the slots as they stand and writes it to its slot. `stopped`:
 * the transfer pump is known to stand, so the columns are static. After `deriveHall` of the unit's hall. Gives back
 * what was read; it holds until the unit's frame is read again. What needs the
 * past is `warming` until enough of it was seen.
 */
export function deriveUnit(
  site: CompiledSite,
  state: SlotState,
  unitIndex: number,
  nowMs: number,
  stopped: boolean,
): UnitFrame {
  const frame = readUnitFrame(site, state, unitIndex, nowMs, stopped);
  frame.memory = deriveMemoryOf(site, state);
  sampleMemory(frame);
  const work = workOf(frame.plan);
  if (frame.stateWithAbsent !== state) markAbsent(frame, work.absent);
  for (const derive of work.derive) derive(frame);
  return frame;
}

/** What a unit can have is fixed by its site: the rest is told once to be not applicable, and costs nothing after. */
interface Work {
  readonly derive: readonly ((frame: UnitFrame) => void)[];
  readonly absent: readonly number[];
}

const works = new WeakMap<UnitPlan, Work>();

function workOf(plan: UnitPlan): Work {
  const known = works.get(plan);
  if (known !== undefined) return known;
  const applies = derivedPointsOfUnit.map((point) => point.applies?.(plan) ?? true);
  const work = {
    derive: derivedPointsOfUnit
      .filter((point, i) => applies[i] === true && slotsOfPoint(plan, point.id).some(hasSlot))
      .map(({ derive }) => derive),
    absent: derivedPointsOfUnit
      .filter((_, i) => applies[i] === false)
      .flatMap(({ id }) => slotsOfPoint(plan, id))
      .filter(hasSlot),
  };
  works.set(plan, work);
  return work;
}

const hasSlot = (slot: number): boolean => slot >= 0;

function markAbsent(frame: UnitFrame, slots: readonly number[]): void {
  for (const slot of slots) frame.state.reasons[slot] = reasonBit.notApplicable;
  frame.stateWithAbsent = frame.state;
}
