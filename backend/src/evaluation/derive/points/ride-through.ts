import { steadyTemperature, timeToTemperature } from '@ebbline/shared/heat/time-to-temperature';
import { timeUntilGone } from '@ebbline/shared/hydraulics/tank-water';
import { combine2, combine3, expanded, rectangular } from '@ebbline/shared/uncertainty/combine';
import type { CompiledPlate } from '../../site/compiled-site';
import { badBits, reasonBit } from '../../slots/quality-reasons';
import { fanResistanceHalfWidth, plateHeatCapacityHalfWidth, shareFloor } from '../derive-constants';
import { isSmall } from '../small';
import { part } from '../uncertainty-budget';
import type { UnitFrame } from '../unit-frame';
import type { UnitPlan } from '../unit-plan';
import { hasStoredWater, storedWater, storedWaterU } from '../stored-water';
import { partOf, uOf, writePoint } from '../write-point';
import { writeDerived } from '../write-derived';

export const hasRideThroughFlow = (plan: UnitPlan): boolean =>
  plan.slot['loop.flow'] >= 0 && (plan.unit.shape === 'c' || hasStoredWater(plan));

const judged = ({ slot }: CompiledPlate): boolean => slot.temperature >= 0 && slot.power >= 0;

export const hasRideThroughPlate = ({ unit }: UnitPlan): boolean =>
  unit.design.plateLimitC !== null && unit.design.plateHeatCapacityJPerK !== null && unit.plates.some(judged);

export const hasTemperatureOnFans = ({ unit, hallTemperatureSlot }: UnitPlan): boolean =>
  hallTemperatureSlot >= 0 && unit.plates.some(({ slot, fanPath }) => slot.power >= 0 && fanPath !== null);

export const hasRideThroughFans = (plan: UnitPlan): boolean => hasRideThroughPlate(plan) && hasTemperatureOnFans(plan);

/** Seconds that the loop still flows if the pump stopped now: what the supply tank, or the tanks that discharge, may give off. In shape c the pump itself moves the loop: none. */
export function deriveRideThroughFlow(frame: UnitFrame): void {
  const { tally, state, plan } = frame;
  tally.begin();
  const flow = tally.take(state, plan.slot['loop.flow']);
  if (plan.unit.shape === 'c') {
    writePoint(frame, plan.slot.rideThroughFlow, 0, 0);
    return;
  }
  const usable = storedWater(frame);
  if (flow < shareFloor * plan.unit.design.ratedFlowM3PerS) tally.note(reasonBit.undefined, Infinity);
  const value = timeUntilGone(usable, flow);
  const u = combine2(storedWaterU(frame, 1 / flow), partOf(frame, plan.slot['loop.flow'], value / flow));
  writePoint(frame, plan.slot.rideThroughFlow, value, u);
}

/** Seconds until the first plate is at its limit if its water stood now, its heat stored in itself alone. */
export function deriveRideThroughPlate(frame: UnitFrame): void {
  deriveClock(frame, frame.plan.slot.rideThroughPlate, false);
}

/** The same with the fans of its server; does not apply where fans hold every plate below its limit. */
export function deriveRideThroughFans(frame: UnitFrame): void {
  deriveClock(frame, frame.plan.slot.rideThroughFans, true);
}

function deriveClock(frame: UnitFrame, target: number, fans: boolean): void {
  const { tally, state, plan } = frame;
  const { design, plates } = plan.unit;
  const heatCapacity = design.plateHeatCapacityJPerK ?? Number.NaN;
  const limit = design.plateLimitC ?? Number.NaN;
  tally.begin();
  const hall = fans ? tally.take(state, plan.hallTemperatureSlot) : 0;
  let soonest = Infinity;
  let first: CompiledPlate | undefined;
  let seen = 0;
  for (const plate of plates) {
    if (!judged(plate)) continue;
    if (isBad(frame, plate.slot.temperature) || isBad(frame, plate.slot.power)) {
      tally.note(reasonBit.inputUncertain, Infinity);
      continue;
    }
    seen += 1;
    const now = tally.take(state, plate.slot.temperature);
    const lossWPerK = fans && plate.fanPath !== null ? 1 / plate.fanPath.resistanceKPerW : 0;
    const time = timeToTemperature(heatCapacity, tally.take(state, plate.slot.power), now, limit, lossWPerK, hall);
    if (time < soonest) {
      soonest = time;
      first = plate;
    }
  }
  if (seen === 0) tally.note(reasonBit.inputBad, Infinity);
  else if (soonest === Infinity && !tally.isBad()) tally.note(reasonBit.notApplicable, Infinity);
  const u = first === undefined ? Number.NaN : clockU(frame, first, soonest, fans);
  writeDerived(state, target, frame.nowMs, tally, soonest, expanded(u), first?.place ?? -1);
}

/**
 * By differentiating the clock: it moves by C/Q of now for each kelvin of the chip, and by C (1/Q_now − 1/Q_limit) for each kelvin of the hall
 * or each watt times the fans' resistance, Q being the heat that stays in the chip. Where Q at the limit is within its uncertainty the
 * limit may as well never come: undefined.
 */
function clockU(frame: UnitFrame, { slot, fanPath }: CompiledPlate, time: number, fans: boolean): number {
  const { state, plan, tally } = frame;
  const { design } = plan.unit;
  const heatCapacity = design.plateHeatCapacityJPerK ?? Number.NaN;
  const lossWPerK = fans && fanPath !== null ? 1 / fanPath.resistanceKPerW : 0;
  const hall = lossWPerK === 0 ? 0 : (state.value[plan.hallTemperatureSlot] ?? Number.NaN);
  const power = state.value[slot.power] ?? Number.NaN;
  const staysNow = power - lossWPerK * ((state.value[slot.temperature] ?? Number.NaN) - hall);
  const staysAtLimit = power - lossWPerK * ((design.plateLimitC ?? Number.NaN) - hall);
  const hallU = lossWPerK === 0 ? 0 : lossWPerK * uOf(frame, plan.hallTemperatureSlot);
  if (isSmall(staysAtLimit, combine2(uOf(frame, slot.power), hallU)) && !tally.isBad())
    tally.note(reasonBit.undefined, Infinity);
  const byHall = heatCapacity * (1 / staysNow - 1 / staysAtLimit);
  const byResistance =
    lossWPerK === 0 ? 0 : clockByResistance(heatCapacity, power, lossWPerK, time, staysNow, staysAtLimit);
  return combine2(
    combine2(
      partOf(frame, slot.temperature, heatCapacity / staysNow),
      partOf(frame, slot.power, lossWPerK === 0 ? time / power : byHall / lossWPerK),
    ),
    combine2(
      lossWPerK === 0
        ? 0
        : combine2(
            partOf(frame, plan.hallTemperatureSlot, byHall),
            part(frame, 'fanPath.resistance', byResistance * rectangular(fanResistanceHalfWidth)),
          ),
      part(frame, 'plateHeatCapacity', time * rectangular(plateHeatCapacityHalfWidth)),
    ),
  );
}

/**
 * By how much the clock t = R C ln(Q_now/Q_limit), Q = P − (T − T_hall)/R, moves with one whole of the fans' resistance R: as
 * R ∂Q/∂R = P − Q, R ∂t/∂R = t + R C ((P − Q_now)/Q_now − (P − Q_limit)/Q_limit).
 */
function clockByResistance(
  heatCapacity: number,
  power: number,
  lossWPerK: number,
  time: number,
  staysNow: number,
  staysAtLimit: number,
): number {
  return time + (heatCapacity / lossWPerK) * ((power - staysNow) / staysNow - (power - staysAtLimit) / staysAtLimit);
}

/** Where the hottest of the chips that have fans settles on them alone, °C: hall air + power × resistance with fans at full speed. */
export function deriveTemperatureOnFans(frame: UnitFrame): void {
  const { tally, state, plan } = frame;
  tally.begin();
  const hall = tally.take(state, plan.hallTemperatureSlot);
  let most = -Infinity;
  let hottest: CompiledPlate | undefined;
  for (const plate of plan.unit.plates) {
    if (plate.slot.power < 0 || plate.fanPath === null) continue;
    if (isBad(frame, plate.slot.power)) {
      tally.note(reasonBit.inputUncertain, Infinity);
      continue;
    }
    const settles = steadyTemperature(hall, tally.take(state, plate.slot.power), plate.fanPath.resistanceKPerW);
    if (settles > most) {
      most = settles;
      hottest = plate;
    }
  }
  if (hottest === undefined) tally.note(reasonBit.inputBad, Infinity);
  const u = combine3(
    partOf(frame, plan.hallTemperatureSlot, 1),
    part(frame, 'fanPath.resistance', (most - hall) * rectangular(fanResistanceHalfWidth)),
    partOf(frame, hottest?.slot.power ?? -1, hottest?.fanPath?.resistanceKPerW ?? Number.NaN),
  );
  writeDerived(state, plan.slot.temperatureOnFans, frame.nowMs, tally, most, expanded(u), hottest?.place ?? -1);
}

const isBad = ({ state }: UnitFrame, slot: number): boolean => ((state.reasons[slot] ?? 0) & badBits) !== 0;
