import { resistanceAtFlow, thermalResistance } from '@ebbline/shared/heat/thermal-resistance';
import { combine2, combine3, expanded, rectangular } from '@ebbline/shared/uncertainty/combine';
import type { CompiledPlate } from '../../site/compiled-site';
import { reasonBit } from '../../slots/quality-reasons';
import { commissionedHalfWidth } from '../derive-constants';
import { isSmall } from '../small';
import { part } from '../uncertainty-budget';
import type { UnitFrame } from '../unit-frame';
import type { UnitPlan } from '../unit-plan';
import { partOf, uOf } from '../write-point';
import { writeDerived } from '../write-derived';
import { plateFlowShare, plateFlowSlot, takePlateFlow } from './plate-flow';

const measured = ({ slot }: CompiledPlate): boolean => slot.temperature >= 0 && slot.power >= 0;

export const hasPlateResistance = ({ unit, slot }: UnitPlan): boolean =>
  slot['supply.temperature'] >= 0 && unit.plates.some(measured);

export const hasPlateRatio = (plan: UnitPlan): boolean =>
  hasPlateResistance(plan) && plan.unit.design.commissioned.plateResistanceKPerW !== null;

/** Case-to-supply resistance of each plate, K/W; says nothing while the case is not surely warmer than the supply. */
export function derivePlateResistance(frame: UnitFrame): void {
  const { tally, state, plan } = frame;
  const { plates } = plan.unit;
  const supplySlot = plan.slot['supply.temperature'];
  const supplyU = uOf(frame, supplySlot);
  for (let i = 0; i < plates.length; i += 1) {
    const plate = plates[i];
    const target = plan.plateResistanceSlot[i] ?? -1;
    if (plate === undefined || target < 0) continue;
    tally.begin();
    const caseC = tally.take(state, plate.slot.temperature);
    const supplyC = tally.take(state, supplySlot);
    const power = tally.take(state, plate.slot.power);
    const differenceU = combine2(uOf(frame, plate.slot.temperature), supplyU);
    if (power <= 0 || isSmall(power, uOf(frame, plate.slot.power)) || caseC - supplyC < 4 * differenceU)
      tally.note(reasonBit.undefined, Infinity);
    const value = thermalResistance(caseC, supplyC, power);
    const u = combine3(
      partOf(frame, plate.slot.temperature, 1 / power),
      partOf(frame, supplySlot, 1 / power),
      partOf(frame, plate.slot.power, value / power),
    );
    writeDerived(state, target, frame.nowMs, tally, value, expanded(u), plate.place);
  }
}

/** The same over what commissioning found, brought to the flow that the plate has now: its branch's, or else the loop's. */
export function derivePlateRatio(frame: UnitFrame): void {
  const { tally, state, plan } = frame;
  const { plates } = plan.unit;
  let branch = -2;
  let expected = Number.NaN;
  for (let i = 0; i < plates.length; i += 1) {
    const plate = plates[i];
    const target = plan.plateRatioSlot[i] ?? -1;
    if (plate === undefined || target < 0) continue;
    tally.begin();
    const now = tally.take(state, plan.plateResistanceSlot[i] ?? -1);
    // Plates of one branch stand together as a rule: its flow is worked out once.
    if (plate.branch !== branch) {
      branch = plate.branch;
      expected = resistanceExpected(frame, branch);
    }
    takePlateFlow(frame, branch);
    const value = now / expected;
    const u = combine3(
      partOf(frame, plan.plateResistanceSlot[i] ?? -1, 1 / expected),
      ofFlow(frame, branch, value, expected),
      part(frame, 'commissioning.plate.resistance', value * rectangular(commissionedHalfWidth)),
    );
    writeDerived(state, target, frame.nowMs, tally, value, expanded(u), plate.place);
  }
}

/** What is expected falls with flow: a + b·s^−n moves by −n (1 − a/R) of itself for each share of the flow. */
function ofFlow(frame: UnitFrame, branch: number, value: number, expected: number): number {
  const { plateResistanceFixedKPerW, plateExponent } = frame.plan.unit.design.commissioned;
  const slot = plateFlowSlot(frame, branch);
  const flow = frame.state.value[slot] ?? Number.NaN;
  return partOf(frame, slot, (value * plateExponent * (1 - plateResistanceFixedKPerW / expected)) / flow);
}

function resistanceExpected(frame: UnitFrame, branch: number): number {
  const { plateResistanceKPerW, plateResistanceFixedKPerW, plateExponent } = frame.plan.unit.design.commissioned;
  if (plateResistanceKPerW === null) return Number.NaN;
  return resistanceAtFlow(
    plateResistanceFixedKPerW,
    plateResistanceKPerW - plateResistanceFixedKPerW,
    plateFlowShare(frame, branch),
    plateExponent,
  );
}
