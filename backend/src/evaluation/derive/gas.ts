import { saturationPressure } from '@ebbline/shared/fluid-properties/saturation-pressure';
import { freeAirOfThroughput } from '@ebbline/shared/hydraulics/free-air';
import { gasContent } from '@ebbline/shared/hydraulics/pressure-rise';
import { gasLoadBySpeed, suctionAt } from '@ebbline/shared/hydraulics/vacuum-suction';
import { sealWaterFactor } from '@ebbline/shared/hydraulics/vacuum-reserve';
import { combine2, combine3, rectangular } from '@ebbline/shared/uncertainty/combine';
import { celsius, cubicMetrePerSecond, pascalAbsolute, type PascalAbsolute } from '@ebbline/shared/units/quantity';
import type { GasFlow } from './gas-flow';
import type { VacuumSource } from '../site/compiled-site';
import { curveHalfWidth, gasVolumeHalfWidth } from './derive-constants';
import { WindowSignal } from './memory/derive-memory';
import { standardUncertainty } from './standard-uncertainty';
import type { UnitFrame } from './unit-frame';

/** Half of the window over which the gas in the separator is seen to grow, s. */
const half = 4;

/** Suction of one source at the separator's pressure and its seal water's temperature, m³/s at inlet conditions. Takes its inputs. */
export function suctionNow(frame: UnitFrame, source: VacuumSource, pressure: PascalAbsolute): number {
  const { tally, state, plan } = frame;
  const sealSlot = plan.slot['vacuum.sealWater.temperature'];
  const suction = suctionAt(source.pressurePa, source.suctionM3PerS, pressure);
  if (source.sealWaterC === null || sealSlot < 0) return suction;
  const seal = celsius(tally.take(state, sealSlot));
  return suction * sealWaterFactor(pressure, seal, celsius(source.sealWaterC));
}

/** All that the vacuum source takes away now: its exhaust meter less the bleed, or speed × curve less the bleed. Takes its inputs. */
export function gasRemoved(frame: UnitFrame, into: GasFlow): void {
  const { tally, state, plan, site } = frame;
  const { slot, unit } = plan;
  const exhaust = slot['vacuum.exhaustFlow'];
  if (exhaust >= 0) {
    into.value = tally.take(state, exhaust);
    into.u = standardUncertainty(site.slots, state, exhaust);
  } else if (unit.vacuumSource === null) {
    into.value = tally.take(state, -1);
    into.u = Number.NaN;
  } else {
    into.value = loadBySpeed(frame, unit.vacuumSource);
    into.u = Math.abs(into.value) * rectangular(curveHalfWidth);
  }
  const bleed = slot['vacuum.bleedFlow'];
  if (bleed < 0) return;
  into.value -= tally.take(state, bleed);
  into.u = combine2(into.u, standardUncertainty(site.slots, state, bleed));
}

/** A source that is not running removes nothing, whatever its speed says; one without a speed, or of constant speed, runs at full. */
function loadBySpeed(frame: UnitFrame, source: VacuumSource): number {
  const { tally, state, plan } = frame;
  const { slot } = plan;
  const bySpeed = source.control === 'speed';
  const running = slot['vacuum.running'] >= 0 ? tally.take(state, slot['vacuum.running']) : 1;
  const speed =
    (bySpeed && slot['vacuum.speed'] >= 0) || slot['vacuum.running'] < 0 ? tally.take(state, slot['vacuum.speed']) : 1;
  const pressure = pascalAbsolute(tally.take(state, slot['separator.pressure']));
  tally.take(state, slot['return.temperature']);
  const share = running * speed;
  if (share === 0) return 0;
  return gasLoadBySpeed(
    share,
    cubicMetrePerSecond(suctionNow(frame, source, pressure)),
    pressure,
    saturationPressure(frame.returnTemperature),
    frame.returnTemperature,
  );
}

/** Dry gas in the separator, Pa m³, by its pressure and level; NaN where it is not known. Room at the usual level is the site file's. */
export function gasInSeparator(frame: UnitFrame, separatorLevelM: number): number {
  const { design } = frame.plan.unit;
  const { separatorGasM3, separatorUsualLevelM } = design.volumes;
  const area = design.separatorAreaM2;
  if (separatorGasM3 === null) return Number.NaN;
  const rise =
    area === null || separatorUsualLevelM === null || Number.isNaN(separatorLevelM)
      ? 0
      : area * (separatorLevelM - separatorUsualLevelM);
  return gasContent(frame.separatorPressure, saturationPressure(frame.returnTemperature), separatorGasM3 - rise);
}

/**
 * All gas that comes in: what is taken away plus what collects in the separator, which a pressure that still moves hides.
 * Where the source rests, or rested last, the rate of that pressure-rise test, as long as what is seen now does not
 * contradict it; else the sum of both as they are now. Without a known gas room the removed gas alone. Writes into `into`.
 */
export function gasComing(frame: UnitFrame, removed: Readonly<GasFlow>, into: GasFlow): void {
  into.value = removed.value;
  into.u = removed.u;
  const { memory, plan } = frame;
  if (memory === null || plan.unit.design.volumes.separatorGasM3 === null) return;
  const signal = memory.signal(plan.unitIndex, WindowSignal.gasContent);
  const collects = memory.windows.slope(signal, half);
  if (Number.isNaN(collects)) return;
  const t = frame.returnTemperature;
  const noise = freeAirOfThroughput(memory.windows.slopeNoise(signal, half), t);
  const stored = freeAirOfThroughput(collects, t);
  // Both over the same seconds, or each start of the source would look like a gulp of air.
  into.value = memory.windows.triangular(memory.signal(plan.unitIndex, WindowSignal.gasRemoved), half) + stored;
  into.u = combine3(removed.u, noise, stored * rectangular(gasVolumeHalfWidth));
  const tested = freeAirOfThroughput(memory.offTests.rate[plan.unitIndex] as number, t);
  const testedNoise = freeAirOfThroughput(memory.offTests.noise[plan.unitIndex] as number, t);
  const testedU = combine2(testedNoise, tested * rectangular(gasVolumeHalfWidth));
  if (Math.abs(into.value - tested) <= 3 * combine2(into.u, testedU)) {
    into.value = tested;
    into.u = testedU;
  }
}
