import { reasonBit } from '../../slots/quality-reasons';
import { uncertaintyOfReading } from '../standard-uncertainty';
import { part } from '../uncertainty-budget';
import type { UnitFrame } from '../unit-frame';
import type { UnitPlan } from '../unit-plan';
import { writePoint } from '../write-point';

/** Over which the counter is read, s: what it may be off is so much of what it counted then. */
const windowS = 600;

export const hasTopUp = ({ slot }: UnitPlan): boolean => slot['topUp.volume'] >= 0;

/** Top-up water by its counter, mean of the last ten minutes, m³/s. */
export function deriveTopUpRate(frame: UnitFrame): void {
  const { tally, state, plan, memory } = frame;
  tally.begin();
  tally.take(state, plan.slot['topUp.volume']);
  const rate = memory?.topUps.rate(plan.unitIndex, frame.nowMs) ?? Number.NaN;
  if (Number.isNaN(rate) && !tally.isBad()) tally.note(reasonBit.warming, Infinity);
  const countedU = uncertaintyOfReading(frame.site.slots, plan.slot['topUp.volume'], rate * windowS);
  writePoint(frame, plan.slot.topUpRate, rate, part(frame, 'topUp.volume', countedU / windowS));
}
