import type { CompiledSite } from '../site/compiled-site';
import { reasonBit } from '../slots/quality-reasons';
import type { SlotState } from '../slots/slot-state';
import { derivedPointsOfUnit } from './derived-points';
import { deriveMemoryOf } from './memory/memory-of-state';
import { sampleMemory } from './sample-memory';
import { readUnitFrame, type DeriveWork, type UnitFrame } from './unit-frame';
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
  const work = (frame.work ??= planWork(frame.plan));
  if (frame.startedState !== state) start(frame, work);
  sampleMemory(frame);
  for (const derive of work.derive) derive(frame);
  return frame;
}

/** What a unit can have is fixed by its site: the rest is told once to be not applicable, and costs nothing after. */
function planWork(plan: UnitPlan): DeriveWork {
  const present = (id: string): boolean => slotsOfPoint(plan, id).some(hasSlot);
  const applies = derivedPointsOfUnit.map((point) => point.applies?.(plan) ?? true);
  return {
    derive: derivedPointsOfUnit.filter(({ id }, i) => applies[i] === true && present(id)).map(({ derive }) => derive),
    absent: derivedPointsOfUnit
      .filter((_, i) => applies[i] === false)
      .flatMap(({ id }) => slotsOfPoint(plan, id))
      .filter(hasSlot),
  };
}

const hasSlot = (slot: number): boolean => slot >= 0;

/** The first step with these values. */
function start(frame: UnitFrame, { absent }: DeriveWork): void {
  frame.startedState = frame.state;
  frame.memory = deriveMemoryOf(frame.site, frame.state);
  for (const slot of absent) frame.state.reasons[slot] = reasonBit.notApplicable;
}
