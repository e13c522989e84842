import { reasonBit } from '../../slots/quality-reasons';
import type { UnitFrame } from '../unit-frame';
import type { UnitPlan } from '../unit-plan';
import { writePoint } from '../write-point';

export const hasTopUp = ({ slot }: UnitPlan): boolean => slot['topUp.volume'] >= 0;

/** Top-up water by its counter, mean of the last ten minutes, m³/s. */
export function deriveTopUpRate(frame: UnitFrame): void {
  const { tally, state, plan, memory } = frame;
  tally.begin();
  tally.take(state, plan.slot['topUp.volume']);
  const rate = memory?.topUps.rate(plan.unitIndex, frame.nowMs) ?? Number.NaN;
  if (Number.isNaN(rate) && !tally.isBad()) tally.note(reasonBit.warming, Infinity);
  writePoint(frame, plan.slot.topUpRate, rate, Number.NaN);
}
