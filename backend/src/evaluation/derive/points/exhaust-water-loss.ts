import { exhaustWater } from '@ebbline/shared/hydraulics/exhaust-water';
import { combine2, rectangular } from '@ebbline/shared/uncertainty/combine';
import { writeFitted } from '../few-observations';
import { gasU } from '../gas-flow';
import { absolutePressureUncertainty } from '../node-pressure';
import { part } from '../uncertainty-budget';
import type { UnitFrame } from '../unit-frame';
import type { UnitPlan } from '../unit-plan';
import { uOf } from '../write-point';
import { takeStored } from './gas-load';

/** The gas leaves the separator nearly saturated: half-width of how nearly, as a share. Own rule. */
const saturationHalfWidth = 0.2;

export const hasExhaustWaterLoss = ({ slot, unit }: UnitPlan): boolean =>
  slot['separator.pressure'] >= 0 &&
  slot['return.temperature'] >= 0 &&
  (slot['vacuum.exhaustFlow'] >= 0 || unit.vacuumSource !== null);

/**
 * Water that leaves the loop as vapour with the gas, m³/s of liquid, by Dalton. At most so much: what condenses behind the
 * separator and is led back is not lost.
 */
export function deriveExhaustWaterLoss(frame: UnitFrame): void {
  const { tally, gasTally, state, plan, memory, elapsedS } = frame;
  const { slot, unit } = plan;
  tally.begin();
  tally.note(gasTally.reasons, gasTally.oldestMs);
  tally.take(state, slot['separator.pressure']);
  tally.take(state, slot['return.temperature']);
  const byPauses = unit.vacuumSource?.control === 'startStop' && unit.design.volumes.separatorGasM3 !== null;
  if (byPauses) takeStored(frame);
  const gas = byPauses ? frame.gasComing : frame.gasRemoved;
  const p = frame.separatorPressure;
  const vapour = frame.returnColumn.vapourPressure;
  const perGas = exhaustWater(1, p, vapour) / frame.returnColumnDensity;
  const value = Math.max(0, gas.value) * perGas;
  if (memory !== null && elapsedS > 0 && value > 0) memory.addWaterLoss(plan.unitIndex, value * elapsedS);
  const byPressure = (value * absolutePressureUncertainty(frame, slot['separator.pressure'])) / (p - vapour);
  const vapourU = plan.fluid.vapourPressureSlope(frame.returnTemperature) * uOf(frame, slot['return.temperature']);
  const u = combine2(
    combine2(gasU(frame, gas, perGas), part(frame, 'separator.pressure', byPressure)),
    combine2(
      part(frame, 'return.temperature', (value * p * vapourU) / (vapour * (p - vapour))),
      part(frame, 'gas not quite saturated', value * rectangular(saturationHalfWidth)),
    ),
  );
  writeFitted(frame, slot.exhaustWaterLoss, value, u);
}
