import { heatFlux, temperatureAtFullPower } from '@ebbline/shared/heat/chip-at-full-power';
import { combine2, combine3, expanded, rectangular } from '@ebbline/shared/uncertainty/combine';
import type { CompiledPlate } from '../../site/compiled-site';
import { reasonBit } from '../../slots/quality-reasons';
import { areaHalfWidth } from '../derive-constants';
import { isSmall } from '../small';
import { part } from '../uncertainty-budget';
import type { UnitFrame } from '../unit-frame';
import type { UnitPlan } from '../unit-plan';
import { uOf } from '../write-point';
import { writeDerived } from '../write-derived';

const measured = ({ slot }: CompiledPlate): boolean => slot.temperature >= 0 && slot.power >= 0;

export const hasFullPower = ({ unit, slot, pipes }: UnitPlan): boolean =>
  slot['supply.temperature'] >= 0 && unit.plates.some((plate, i) => measured(plate) && (pipes.fullPowerW[i] ?? 0) > 0);

export const hasHeatFlux = ({ unit, pipes }: UnitPlan): boolean =>
  unit.plates.some((plate, i) => plate.slot.power >= 0 && (pipes.chipAreaM2[i] ?? 0) > 0);

/**
 * Chip case that full power would bring with the water of now, °C. Its resistance does not change with power; what fans take goes
 * with the power too. Says nothing while the case is not surely warmer than the supply: there is nothing to go by.
 */
export function deriveFullPower(frame: UnitFrame): void {
  const { tally, state, plan } = frame;
  const { plates } = plan.unit;
  const supplySlot = plan.slot['supply.temperature'];
  const supplyU = uOf(frame, supplySlot);
  for (let i = 0; i < plates.length; i += 1) {
    const plate = plates[i];
    const target = plan.pipes.fullPowerSlot[i] ?? -1;
    if (plate === undefined || target < 0) continue;
    const full = plan.pipes.fullPowerW[i] ?? Number.NaN;
    tally.begin();
    if (Number.isNaN(full)) tally.note(reasonBit.notApplicable, Infinity);
    const caseC = tally.take(state, plate.slot.temperature);
    const supplyC = tally.take(state, supplySlot);
    const power = tally.take(state, plate.slot.power);
    const caseU = uOf(frame, plate.slot.temperature);
    const powerU = uOf(frame, plate.slot.power);
    if (power <= 0 || isSmall(power, powerU) || caseC - supplyC < 2 * combine2(caseU, supplyU))
      tally.note(reasonBit.undefined, Infinity);
    const ratio = full / power;
    const u = combine3(
      part(frame, 'plate.<id>.temperature', ratio * caseU),
      part(frame, 'supply.temperature', Math.abs(1 - ratio) * supplyU),
      part(frame, 'plate.<id>.power', ((caseC - supplyC) * ratio * powerU) / power),
    );
    const value = temperatureAtFullPower(caseC, supplyC, power, full);
    writeDerived(state, target, frame.nowMs, tally, value, expanded(u), plate.place);
  }
}

/** Heat flux from each chip into its plate, W/m². */
export function deriveHeatFlux(frame: UnitFrame): void {
  const { tally, state, plan } = frame;
  const { plates } = plan.unit;
  for (let i = 0; i < plates.length; i += 1) {
    const plate = plates[i];
    const target = plan.pipes.heatFluxSlot[i] ?? -1;
    if (plate === undefined || target < 0) continue;
    const area = plan.pipes.chipAreaM2[i] ?? Number.NaN;
    tally.begin();
    if (Number.isNaN(area)) tally.note(reasonBit.notApplicable, Infinity);
    const value = heatFlux(tally.take(state, plate.slot.power), area);
    const u = combine2(
      part(frame, 'plate.<id>.power', uOf(frame, plate.slot.power) / area),
      part(frame, 'chipArea', Math.abs(value) * rectangular(areaHalfWidth)),
    );
    writeDerived(state, target, frame.nowMs, tally, value, expanded(u), plate.place);
  }
}
