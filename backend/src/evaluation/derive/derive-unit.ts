import type { CompiledSite } from '../site/compiled-site';
import { reasonBit } from '../slots/quality-reasons';
import type { SlotState } from '../slots/slot-state';
import type { DerivedPointOfUnit } from './derived-point';
import { derivedPointsOfUnit } from './derived-points';
import { deriveMemoryOf } from './memory/memory-of-state';
import { sampleMemory } from './sample-memory';
import { readUnitFrame, type UnitFrame } from './unit-frame';
import type { UnitPlan } from './unit-plan';
import { slotsOfPoint } from './slots-of-point';

/**
 * Works out every derived point of a unit from the slots as they stand and writes it to its slot. `stopped`:
 * the transfer pump is known to stand, so the columns are static. After `deriveHall` of the unit's hall. Gives back
 * what was read; it holds until the next unit's frame is read. What needs the
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
  const work = workOf(frame);
  if (work.startedState !== state) start(state, work);
  frame.memory = deriveMemoryOf(site, state);
  sampleMemory(frame);
  for (const derive of work.derive) {
    // What a point that gave up half-way summed is none of the next one's.
    frame.scatter = 0;
    derive(frame);
  }
  return frame;
}

/** Points that a unit has, as functions of its frame, and the slots of those that it can't have. */
interface DeriveWork {
  readonly derive: readonly ((frame: UnitFrame) => void)[];
  readonly absent: readonly number[];
  /** Slots of points that would be there if the site file set what they take. */
  readonly notSet: readonly number[];
  /** The values in which the points that this unit can't have were told so already. */
  startedState: SlotState | null;
}

const workOfUnits = new WeakMap<CompiledSite, (DeriveWork | undefined)[]>();

/** What is worked out each second, planned on the unit's first. */
function workOf({ site, plan }: UnitFrame): DeriveWork {
  let works = workOfUnits.get(site);
  if (works === undefined) {
    works = [];
    workOfUnits.set(site, works);
  }
  return (works[plan.unitIndex] ??= planWork(plan));
}

/** What a unit can have is fixed by its site: the rest is told once to be not applicable or not set, and costs nothing after. */
function planWork(plan: UnitPlan): DeriveWork {
  const present = (id: string): boolean => slotsOfPoint(plan, id).some(hasSlot);
  const lacking = new Set(derivedPointsOfUnit.filter(({ applies }) => applies?.(plan) === false).map(({ id }) => id));
  const kindOf = ({ id, isSet, watches }: DerivedPointOfUnit): keyof Omit<DeriveWork, 'startedState'> => {
    if (lacking.has(id)) return 'absent';
    if (isSet?.(plan) !== false) return 'derive';
    return watches !== undefined && lacking.has(watches) ? 'absent' : 'notSet';
  };
  const slotsOf = (kind: 'absent' | 'notSet'): number[] =>
    derivedPointsOfUnit
      .filter((point) => kindOf(point) === kind)
      .flatMap(({ id }) => slotsOfPoint(plan, id))
      .filter(hasSlot);
  return {
    derive: derivedPointsOfUnit
      .filter((point) => kindOf(point) === 'derive' && present(point.id))
      .map(({ derive }) => derive),
    absent: slotsOf('absent'),
    notSet: slotsOf('notSet'),
    startedState: null,
  };
}

const hasSlot = (slot: number): boolean => slot >= 0;

/** The first step with these values. */
function start(state: SlotState, work: DeriveWork): void {
  work.startedState = state;
  for (const slot of work.absent) state.reasons[slot] = reasonBit.notApplicable;
  for (const slot of work.notSet) state.reasons[slot] = reasonBit.notSet;
}
