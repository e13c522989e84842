import { gasLoadBySpeed, suctionAt } from '@ebbline/shared/hydraulics/vacuum-suction';
import { combine3, rectangular } from '@ebbline/shared/uncertainty/combine';
import { cubicMetrePerSecond, pascalAbsolute } from '@ebbline/shared/units/quantity';
import type { VacuumSource } from '../../site/compiled-unit';
import { curveHalfWidth } from '../derive-constants';
import { suctionNow } from '../gas';
import { absolutePressureUncertainty } from '../node-pressure';
import { part } from '../uncertainty-budget';
import type { UnitFrame } from '../unit-frame';
import type { UnitPlan } from '../unit-plan';
import { partOf, writePoint } from '../write-point';

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
  const vapour = frame.returnColumn.vapourPressure;
  const suction = cubicMetrePerSecond(suctionNow(frame, source, pressure));
  const value = gasLoadBySpeed(1, suction, pressure, vapour, frame.returnTemperature);
  const dry = Math.max(1, pressure - vapour);
  const pressureU = absolutePressureUncertainty(frame, slot['separator.pressure']);
  const u = combine3(
    part(frame, 'vacuumSource.curve', value * rectangular(curveHalfWidth)),
    part(frame, 'separator.pressure', value * (pressureU / dry + suctionMove(source, pressure, pressureU))),
    partOf(frame, slot['return.temperature'], (value * plan.fluid.vapourPressureSlope(frame.returnTemperature)) / dry),
  );
  writePoint(frame, slot.vacuumCapacity, value, u);
}

/** By what share of itself the suction moves with one standard uncertainty of the pressure; half of it where both ways differ. */
function suctionMove({ pressurePa, suctionM3PerS }: VacuumSource, pressure: number, u: number): number {
  const above = suctionAt(pressurePa, suctionM3PerS, pascalAbsolute(pressure + u));
  const below = suctionAt(pressurePa, suctionM3PerS, pascalAbsolute(pressure - u));
  return (above - below) / (above + below);
}
