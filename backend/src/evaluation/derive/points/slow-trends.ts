import { reasonBit } from '../../slots/quality-reasons';
import type { DerivedPointOfUnit } from '../derived-point';
import { fittedPart, writeFitted } from '../few-observations';
import type { Trend } from '../memory/trend';
import type { PlainPoint } from '../plan-points';
import type { UnitFrame } from '../unit-frame';

const dayS = 86_400;

export const deriveMarginTrend = slopeOf('vacuumMarginWorst', 'marginTrend', (memory) => memory.marginTrend, false);
export const deriveFilterTrend = slopeOf('filterResistance', 'filterTrend', (memory) => memory.filterTrend, false);
export const deriveInLeakTrend = slopeOf('inLeak', 'inLeakTrend', (memory) => memory.inLeakTrend, true);
export const deriveUaTrend = slopeOf('uaRatio', 'uaTrend', (memory) => memory.uaTrend, true);

/** Fouling of the water is seen on all plates, a bad plate on one: so this is their mean, while every plate is known. */
export function derivePlateTrend(frame: UnitFrame): void {
  const { tally, state, plan, memory } = frame;
  tally.begin();
  let sum = 0;
  for (const slot of plan.plateRatioSlot) sum += tally.take(state, slot);
  writeSlope(frame, plan.slot.plateTrend, memory?.plateTrend, sum / plan.plateRatioSlot.length, true);
}

/** `pushes`: nobody else gives this trend its samples. */
function slopeOf(
  source: PlainPoint,
  target: PlainPoint,
  trendOf: (memory: NonNullable<UnitFrame['memory']>) => Trend,
  pushes: boolean,
): DerivedPointOfUnit['derive'] {
  return (frame) => {
    const { tally, state, plan, memory } = frame;
    tally.begin();
    const now = tally.take(state, plan.slot[source]);
    writeSlope(frame, plan.slot[target], memory === null ? undefined : trendOf(memory), now, pushes);
  };
}

/** Theil–Sen slope as a change in a day. */
function writeSlope(frame: UnitFrame, target: number, trend: Trend | undefined, now: number, pushes: boolean): void {
  const { tally, nowMs, elapsedS, plan } = frame;
  const unit = plan.unitIndex;
  if (pushes && elapsedS > 0) trend?.push(unit, nowMs, now);
  if (!frame.watchTurn) return;
  const slope = trend?.slope[unit] ?? Number.NaN;
  if (!tally.isBad() && Number.isNaN(slope)) tally.note(reasonBit.warming, Infinity);
  const u = dayS * (trend?.slopeU(unit) ?? Number.NaN);
  writeFitted(
    frame,
    target,
    slope * dayS,
    fittedPart(frame, 'scatter of the trend', u, trend?.degreesOfFreedom(unit) ?? Infinity),
  );
}
