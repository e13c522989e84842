import { saturationPressure } from '@ebbline/shared/fluid-properties/saturation-pressure';
import { gasLoadBySpeed } from '@ebbline/shared/hydraulics/vacuum-suction';
import { combine2, rectangular } from '@ebbline/shared/uncertainty/combine';
import { cubicMetrePerSecond, pascalAbsolute } from '@ebbline/shared/units/quantity';
import { curveHalfWidth } from '../derive-constants';
import { suctionNow } from '../gas';
import { absolutePressureUncertainty } from '../node-pressure';
import { part } from '../uncertainty-budget';
import type { UnitFrame } from '../unit-frame';
import type { UnitPlan } from '../unit-plan';
import { writePoint } from '../write-point';

export const hasVacuumCapacity = ({ unit, slot }: UnitPlan): boolean =>
  unit.vacuumSource !== null && slot['separator.pressure'] >= 0 && slot['return.temperature'] >= 0;

/** What one source carries at full speed at the separator's present pressure and seal temperature: S(p) (p − p_v), free air. */
export function deriveVacuumCapacity(frame: UnitFrame): void {
  const { tally, state, plan } = frame;
  const { slot, unit } = plan;
  const source = unit.vacuumSource;
  if (source === null) return;
  tally.begin();
  const pressure = pascalAbsolute(tally.take(state, slot['separator.pressure']));
  tally.take(state, slot['return.temperature']);
  const vapour = saturationPressure(frame.returnTemperature);
  const suction = cubicMetrePerSecond(suctionNow(frame, source, pressure));
  const value = gasLoadBySpeed(1, suction, pressure, vapour, frame.returnTemperature);
  const dry = Math.max(1, pressure - vapour);
  const u = combine2(
    part(frame, 'vacuumSource.curve', value * rectangular(curveHalfWidth)),
    part(frame, 'separator.pressure', (value * absolutePressureUncertainty(frame, slot['separator.pressure'])) / dry),
  );
  writePoint(frame, slot.vacuumCapacity, value, u);
}
