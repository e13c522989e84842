import { saturationPressure } from '@ebbline/shared/fluid-properties/saturation-pressure';
import { gasLoadBySpeed, suctionAt } from '@ebbline/shared/hydraulics/vacuum-suction';
import { expanded } from '@ebbline/shared/uncertainty/combine';
import { cubicMetrePerSecond, pascalAbsolute } from '@ebbline/shared/units/quantity';
import type { VacuumSource } from '../../site/compiled-site';
import { standardUncertainty } from '../standard-uncertainty';
import type { UnitFrame } from '../unit-frame';
import { writeDerived } from '../write-derived';

/** All gas that the vacuum source removes, free air: its exhaust meter, or else speed × curve of one source. */
export function deriveGasLoad(frame: UnitFrame): void {
  const { tally, state, plan, site } = frame;
  const { slot, unit } = plan;
  const exhaust = slot['vacuum.exhaustFlow'];
  tally.begin();
  if (exhaust >= 0) {
    const value = tally.take(state, exhaust);
    writeDerived(
      state,
      slot.gasLoad,
      frame.nowMs,
      tally,
      value,
      expanded(standardUncertainty(site.slots, state, exhaust)),
      -1,
    );
    return;
  }
  const value = unit.vacuumSource === null ? tally.take(state, -1) : loadBySpeed(frame, unit.vacuumSource);
  // A site's curve states no accuracy, so neither does this figure.
  writeDerived(state, slot.gasLoad, frame.nowMs, tally, value, Number.NaN, -1);
}

/** A source that is not running removes nothing, whatever its speed says; one without a speed runs at full. */
function loadBySpeed(frame: UnitFrame, source: VacuumSource): number {
  const { tally, state, plan } = frame;
  const { slot } = plan;
  const running = slot['vacuum.running'] >= 0 ? tally.take(state, slot['vacuum.running']) : 1;
  const speed = slot['vacuum.speed'] >= 0 || slot['vacuum.running'] < 0 ? tally.take(state, slot['vacuum.speed']) : 1;
  const pressure = pascalAbsolute(tally.take(state, slot['separator.pressure']));
  tally.take(state, slot['return.temperature']);
  const share = running * speed;
  if (share === 0) return 0;
  const suction = suctionAt(source.pressurePa, source.suctionM3PerS, pressure);
  return gasLoadBySpeed(
    share,
    cubicMetrePerSecond(suction),
    pressure,
    saturationPressure(frame.returnTemperature),
    frame.returnTemperature,
  );
}
