import { splitPoint } from '@ebbline/shared/contract/point-table';
import { hasLevelRate } from './points/tank-rates';
import type { UnitPlan } from './unit-plan';

const none: readonly string[] = [];
const ofSupplyMain = ['supplyTank.pressure or supply.pressure', 'supply.temperature'];
const ofReturnMain = ['separator.pressure or return.pressure', 'return.temperature'];

/** A node is counted along its own main, with the density of that main's water. */
function ofOtherMain({ unit }: UnitPlan, pointId: string): readonly string[] {
  const node = unit.nodes.find(({ id }) => id === splitPoint(pointId)?.id);
  if (node === undefined) return none;
  return node.main === 'supply' ? ofReturnMain : ofSupplyMain;
}

/** By the point's pattern: lines of its row's `inputs` that belong to a way which this unit does not go. */
export const unusedInputs: Readonly<Record<string, (plan: UnitPlan, pointId: string) => readonly string[]>> = {
  // Only alternating tanks make gas by working.
  gasAllowance: ({ unit }) =>
    unit.shape === 'b' ? none : ['loop.flow', 'supplyTank.pressure or supply.pressure', 'separator.pressure'],
  // A meter tells it alone, but for a source that is judged by its pauses.
  gasLoad: ({ slot, unit }) =>
    slot['vacuum.exhaustFlow'] < 0 ||
    (unit.vacuumSource?.control === 'startStop' && unit.design.volumes.separatorGasM3 !== null)
      ? none
      : ['vacuum.running', 'vacuum.standby.running', 'separator.pressure', 'return.temperature'],
  // The loss up to the inlet matters only where the inlet is not measured.
  npshAvailable: ({ slot }) => (slot['pump.inlet.pressure'] >= 0 ? ['loop.flow'] : none),
  // By its level, and not by what flows in and out.
  supplyTankRate: (plan) => (hasLevelRate(plan) ? ['loop.flow'] : none),
  // The sender has put the slope right already.
  ph: ({ unit }) => (unit.water.phSlopeOf25 ? none : ['supply.temperature']),
  'node.<id>.pressure': ofOtherMain,
  'node.<id>.pressureStopped': ofOtherMain,
};
