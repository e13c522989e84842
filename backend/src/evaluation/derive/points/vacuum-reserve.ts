import { vacuumReserve } from '@ebbline/shared/hydraulics/vacuum-reserve';
import { combine2 } from '@ebbline/shared/uncertainty/combine';
import { freeAirCubicMetrePerSecond } from '@ebbline/shared/units/quantity';
import type { UnitFrame } from '../unit-frame';
import { uOf, writePoint } from '../write-point';
import { takeStored } from './gas-load';

/** Capacity of one source less the gas that comes now, free air. Below 0 the separator's pressure rises. */
export function deriveVacuumReserve(frame: UnitFrame): void {
  frame.tally.begin();
  deriveReserve(frame, frame.plan.slot.vacuumReserve, 1);
}

/** The same with every source of the unit, less one while its standby is said not to be available. */
export function deriveVacuumReserveAll(frame: UnitFrame): void {
  frame.tally.begin();
  deriveReserve(frame, frame.plan.slot.vacuumReserveAll, sourcesLeft(frame));
}

function deriveReserve(frame: UnitFrame, target: number, sources: number): void {
  const { tally, state, plan, gasTally, gasComing } = frame;
  const capacity = tally.take(state, plan.slot.vacuumCapacity);
  tally.note(gasTally.reasons, gasTally.oldestMs);
  takeStored(frame);
  const value = vacuumReserve(
    freeAirCubicMetrePerSecond(sources * capacity),
    freeAirCubicMetrePerSecond(gasComing.value),
  );
  writePoint(frame, target, value, combine2(sources * uOf(frame, plan.slot.vacuumCapacity), gasComing.u));
}

/** Takes whether the standby is there, where anything says so. */
function sourcesLeft(frame: UnitFrame): number {
  const { tally, state, plan } = frame;
  const count = plan.unit.vacuumSource?.count ?? 1;
  const available = plan.slot['vacuum.available'];
  return available >= 0 && tally.take(state, available) === 0 ? Math.max(1, count - 1) : count;
}
