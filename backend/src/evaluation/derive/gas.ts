import { freeAirOfThroughput } from '@ebbline/shared/hydraulics/free-air';
import { gasContent } from '@ebbline/shared/hydraulics/pressure-rise';
import { gasLoadBySpeed, suctionAt } from '@ebbline/shared/hydraulics/vacuum-suction';
import { sealWaterFactor } from '@ebbline/shared/hydraulics/vacuum-reserve';
import { combine2, rectangular } from '@ebbline/shared/uncertainty/combine';
import { celsius, cubicMetrePerSecond, pascalAbsolute, type PascalAbsolute } from '@ebbline/shared/units/quantity';
import { addUp, copyGas, GasMethod, unknownGas, type GasFlow } from './gas-flow';
import type { VacuumSource } from '../site/compiled-site';
import { reasonBit } from '../slots/quality-reasons';
import { curveHalfWidth, gasVolumeHalfWidth } from './derive-constants';
import { WindowSignal, type DeriveMemory } from './memory/derive-memory';
import { standardUncertainty } from './standard-uncertainty';
import type { UnitFrame } from './unit-frame';

/** Halves of the windows over which the gas in the separator is seen to grow, s. */
const short = 4;
const long = 30;

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
  into.uMeter = 0;
  into.uCurve = 0;
  into.uBleed = 0;
  if (exhaust >= 0) {
    into.method = GasMethod.meter;
    into.value = tally.take(state, exhaust);
    into.uMeter = standardUncertainty(site.slots, state, exhaust);
  } else if (unit.vacuumSource === null) {
    into.method = GasMethod.none;
    into.value = tally.take(state, -1);
    into.uMeter = Number.NaN;
  } else {
    into.method = GasMethod.curve;
    into.value = loadBySpeed(frame, unit.vacuumSource);
    into.uCurve = Math.abs(into.value) * rectangular(curveHalfWidth);
  }
  const bleed = slot['vacuum.bleedFlow'];
  if (bleed >= 0) {
    into.value -= tally.take(state, bleed);
    into.uBleed = standardUncertainty(site.slots, state, bleed);
  }
  addUp(into);
}

/**
 * A source that is not running removes nothing, whatever its speed says; one without a speed, or of constant speed, runs at full.
 * Not known while the standby runs, whose speed no point tells: by the lead alone a hose that is still open would look closed.
 */
function loadBySpeed(frame: UnitFrame, source: VacuumSource): number {
  const { tally, state, plan } = frame;
  const { slot } = plan;
  const bySpeed = source.control === 'speed';
  const running = slot['vacuum.running'] >= 0 ? tally.take(state, slot['vacuum.running']) : 1;
  const speed =
    (bySpeed && slot['vacuum.speed'] >= 0) || slot['vacuum.running'] < 0 ? tally.take(state, slot['vacuum.speed']) : 1;
  const pressure = pascalAbsolute(tally.take(state, slot['separator.pressure']));
  tally.take(state, slot['return.temperature']);
  const standby = slot['vacuum.standby.running'];
  if (standby >= 0 && tally.take(state, standby) !== 0) {
    tally.note(reasonBit.inputBad, Infinity);
    return Number.NaN;
  }
  const share = running * speed;
  if (share === 0) return 0;
  return gasLoadBySpeed(
    share,
    cubicMetrePerSecond(suctionNow(frame, source, pressure)),
    pressure,
    frame.returnColumn.vapourPressure,
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
  return gasContent(frame.separatorPressure, frame.returnColumn.vapourPressure, separatorGasM3 - rise);
}

/**
 * All gas that comes in: what is taken away plus what collects in the separator, which a pressure that still moves hides. Over
 * the last minute, or the last eight seconds where they say something else. Where the source rests, or rested last, the rate of
 * that pressure-rise test, which is surer, as long as what is seen now does not contradict it. Without a known gas room the removed
 * gas alone. Writes into `into`.
 */
export function gasComing(frame: UnitFrame, removed: Readonly<GasFlow>, into: GasFlow): void {
  copyGas(removed, into);
  const { memory, plan } = frame;
  if (memory === null || plan.unit.design.volumes.separatorGasM3 === null) return;
  gasOver(frame, memory, removed, short, into);
  if (Number.isNaN(into.value)) {
    copyGas(removed, into);
    return;
  }
  gasOver(frame, memory, removed, long, candidate);
  keepSurer(candidate, into);
  const t = frame.returnTemperature;
  ofPause.value = freeAirOfThroughput(memory.offTests.rate[plan.unitIndex] as number, t);
  ofPause.uNoise = freeAirOfThroughput(memory.offTests.noise[plan.unitIndex] as number, t);
  ofPause.noiseDegrees = memory.offTests.noiseDegrees[plan.unitIndex] as number;
  ofPause.uRoom = Math.abs(ofPause.value) * rectangular(gasVolumeHalfWidth);
  addUp(ofPause);
  keepSurer(ofPause, into);
}

const candidate = unknownGas();
/** What the last pause of the source showed: no meter and no curve is in it. */
const ofPause: GasFlow = { ...unknownGas(), method: GasMethod.pause };

/** Takes a surer figure in place of the one that follows faster, as long as the two agree within three standard uncertainties. */
function keepSurer(surer: Readonly<GasFlow>, into: GasFlow): void {
  if (Math.abs(into.value - surer.value) <= 3 * combine2(into.u, surer.u)) copyGas(surer, into);
}

/** Gas taken away and gas that collects, over the same seconds, or each start of the source would look like a gulp of air. */
function gasOver(
  frame: UnitFrame,
  memory: DeriveMemory,
  removed: Readonly<GasFlow>,
  half: number,
  into: GasFlow,
): void {
  const { unitIndex } = frame.plan;
  const { windows } = memory;
  const content = memory.signal(unitIndex, WindowSignal.gasContent);
  const t = frame.returnTemperature;
  const stored = freeAirOfThroughput(windows.slope(content, half), t);
  copyGas(removed, into);
  into.value = windows.triangular(memory.signal(unitIndex, WindowSignal.gasRemoved), half) + stored;
  into.uNoise = freeAirOfThroughput(windows.slopeNoise(content, half), t);
  into.noiseDegrees = windows.noiseDegreesOfFreedom(content);
  into.uRoom = Math.abs(stored) * rectangular(gasVolumeHalfWidth);
  addUp(into);
}
