import { reasonBit } from '../../slots/quality-reasons';
import { writeFitted } from '../few-observations';
import { gasU, type GasFlow } from '../gas-flow';
import type { UnitFrame } from '../unit-frame';

/**
 * All gas that the vacuum source removes, free air, best first: of a source that starts and stops what its pauses show, since the
 * rest is either nothing or everything; else its exhaust meter, or else speed × curve of one source, the bleed taken out of
 * either. `where` says which.
 */
export function deriveGasLoad(frame: UnitFrame): void {
  const { tally, gasTally, plan } = frame;
  const { unit } = plan;
  tally.begin();
  tally.note(gasTally.reasons, gasTally.oldestMs);
  const byPauses = unit.vacuumSource?.control === 'startStop' && unit.design.volumes.separatorGasM3 !== null;
  if (byPauses) takeStored(frame);
  const flow = byPauses ? frame.gasComing : frame.gasRemoved;
  writeGas(frame, plan.slot.gasLoad, flow.value, gasU(frame, flow), flow);
}

/** Writes a gas flow with how it was found. */
export function writeGas(
  frame: UnitFrame,
  target: number,
  value: number,
  u: number,
  { method }: Readonly<GasFlow>,
): void {
  const place = frame.plan.gasMethodPlaces[method] ?? -1;
  writeFitted(frame, target, value, u, place);
}

/** What the gas that collects in the separator rests on, besides what is removed. */
export function takeStored(frame: UnitFrame): void {
  const { tally, state, plan, memory } = frame;
  if (plan.unit.design.volumes.separatorGasM3 === null) return;
  tally.take(state, plan.slot['separator.pressure']);
  tally.take(state, plan.slot['return.temperature']);
  // A lost level leaves the room at its usual size: uncertain, not unknown.
  const level = plan.slot['separator.level'];
  if (level >= 0 && state.reasons[level] !== 0) tally.note(reasonBit.inputUncertain, Infinity);
  if (memory !== null && Number.isNaN(frame.gasComing.value) && !tally.isBad()) tally.note(reasonBit.warming, Infinity);
}
