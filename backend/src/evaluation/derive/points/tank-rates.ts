import { tankRate } from '@ebbline/shared/hydraulics/tank-water';
import { combine2 } from '@ebbline/shared/uncertainty/combine';
import { reasonBit } from '../../slots/quality-reasons';
import { fittedPart, writeFitted } from '../few-observations';
import { rateOf, type Rate } from '../level-rates';
import { WindowSignal } from '../memory/derive-memory';
import type { UnitFrame } from '../unit-frame';
import type { UnitPlan } from '../unit-plan';
import { partOf, writePoint } from '../write-point';

const rate: Rate = { value: Number.NaN, u: Number.NaN, degreesOfFreedom: Infinity };

export const hasSupplyTankRate = (plan: UnitPlan): boolean => hasLevelRate(plan) || byMeters(plan);
/** Whether a level tells it. */
export const hasLevelRate = (plan: UnitPlan): boolean => byTanks(plan) || byLevel(plan);
const byTanks = ({ unit, tankVolumes }: UnitPlan): boolean => unit.shape === 'b' && tankVolumes.length > 0;
const byLevel = ({ slot, unit }: UnitPlan): boolean =>
  slot['supplyTank.level'] >= 0 && unit.design.supplyTankAreaM2 !== null;
const byMeters = ({ slot, unit }: UnitPlan): boolean =>
  unit.shape !== 'c' && slot['transfer.flow'] >= 0 && slot['loop.flow'] >= 0;

export const hasSeparatorRate = ({ slot, unit }: UnitPlan): boolean =>
  slot['separator.level'] >= 0 && unit.design.separatorAreaM2 !== null;

/**
 * Water that the supply tank gains, m³/s: by its level, or else what the transfer pump brings less what the loop takes. Of
 * alternating tanks that the file lists, what they gain together.
 */
export function deriveSupplyTankRate(frame: UnitFrame): void {
  const { tally, state, plan } = frame;
  const { slot, unit } = plan;
  tally.begin();
  if (byTanks(plan)) {
    for (const tank of plan.tankVolumes) tally.take(state, tank.slot);
    deriveByLevel(frame, slot.supplyTankRate, WindowSignal.tankVolume, 1);
    return;
  }
  if (byLevel(plan)) {
    tally.take(state, slot['supplyTank.level']);
    deriveByLevel(frame, slot.supplyTankRate, WindowSignal.supplyLevel, unit.design.supplyTankAreaM2);
    return;
  }
  const value = tally.take(state, slot['transfer.flow']) - tally.take(state, slot['loop.flow']);
  writePoint(
    frame,
    slot.supplyTankRate,
    value,
    combine2(partOf(frame, slot['transfer.flow'], 1), partOf(frame, slot['loop.flow'], 1)),
  );
}

/** Water that the separator gains, m³/s, by its level. Gas that displaces water shows here too. */
export function deriveSeparatorRate(frame: UnitFrame): void {
  const { slot, unit } = frame.plan;
  frame.tally.begin();
  frame.tally.take(frame.state, slot['separator.level']);
  deriveByLevel(frame, slot.separatorRate, WindowSignal.separatorLevel, unit.design.separatorAreaM2);
}

function deriveByLevel(
  frame: UnitFrame,
  target: number,
  signal: (typeof WindowSignal)[keyof typeof WindowSignal],
  areaM2: number | null,
): void {
  const { tally, plan, memory } = frame;
  const area = areaM2 ?? Number.NaN;
  rate.value = Number.NaN;
  if (memory !== null) rateOf(memory.windows, memory.signal(plan.unitIndex, signal), rate);
  if (Number.isNaN(rate.value) && !tally.isBad()) tally.note(reasonBit.warming, Infinity);
  const u = fittedPart(frame, 'scatter of the level', tankRate(area, rate.u), rate.degreesOfFreedom);
  writeFitted(frame, target, tankRate(area, rate.value), u);
}
