import { vacuumReserve } from '@ebbline/shared/hydraulics/vacuum-reserve';
import { combine2 } from '@ebbline/shared/uncertainty/combine';
import { freeAirCubicMetrePerSecond } from '@ebbline/shared/units/quantity';
import { writeFitted } from '../few-observations';
import { gasU } from '../gas-flow';
import { trapIsFull } from '../trap';
import type { UnitFrame } from '../unit-frame';
import { partOf } from '../write-point';
import { takeStored } from './gas-load';

/** Capacity of one source less the gas that comes now, free air. Below 0 the separator's pressure rises. */
export function deriveVacuumReserve(frame: UnitFrame): void {
  frame.tally.begin();
  deriveReserve(frame, frame.plan.slot.vacuumReserve, 1);
}

/**
 * The same with every source of the unit, less one while its standby is said not to be available and does not run, and less one
 * that has water in its trap.
 */
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
  const u = combine2(partOf(frame, plan.slot.vacuumCapacity, sources), gasU(frame, gasComing));
  writeFitted(frame, target, value, u);
}

/** Takes whether the standby is there, and whether a trap is full, where anything says so. */
function sourcesLeft(frame: UnitFrame): number {
  const count = frame.plan.unit.vacuumSource?.count ?? 1;
  const there = standbyIsMissing(frame) ? Math.max(1, count - 1) : count;
  return there - (trapIsFull(frame) ? 1 : 0);
}

/** Many a contact that says "ready" drops as the machine starts: a standby that runs is there. */
function standbyIsMissing({ tally, state, plan }: UnitFrame): boolean {
  const available = plan.slot['vacuum.available'];
  if (available < 0 || tally.take(state, available) !== 0) return false;
  const running = plan.slot['vacuum.standby.running'];
  return running < 0 || tally.take(state, running) === 0;
}
