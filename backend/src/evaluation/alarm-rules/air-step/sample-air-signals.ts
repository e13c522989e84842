import { celsius } from '@ebbline/shared/units/quantity';
import { unitPlan } from '../../derive/unit-plan';
import { reasonBit } from '../../slots/quality-reasons';
import { usable, type UnitContext } from '../judge-context';
import { movingModes } from '../modes-of-rules';
import { AirSignal, branchFlowSignal, branchPressureSignal, forgetAir, type AirMemory } from './air-memory';

/** Takes this tick's sample of every signal of the unit that tells of air. */
export function sampleAirSignals(context: UnitContext): void {
  const { air, slots, state } = context;
  const { fluid, sharesLoop } = unitPlan(context.site, context.unitIndex);
  forgetWhereAmbientChanged(context);
  const first = air.firstSignal[context.unitIndex] as number;
  push(air, first + AirSignal.gasLoad, usable(state, slots.gasLoad));
  push(air, first + AirSignal.vacuumSpeed, usable(state, slots.vacuumSpeed));
  const moving = movingModes.includes(context.mode);
  const water = moving ? Number.NaN : tankWater(context, context.unitIndex);
  push(air, first + AirSignal.tankWater, water);
  push(air, first + AirSignal.loopWater, moving || !sharesLoop ? water : loopWater(context, water));
  push(air, first + AirSignal.separatorWater, separatorWater(context));
  push(air, first + AirSignal.returnExcess, returnExcess(context));
  push(air, first + AirSignal.separatorPressure, usable(state, slots.separatorPressure));
  push(air, first + AirSignal.loopFlow, usable(state, slots.loopFlow));
  push(air, first + AirSignal.vapourPressure, fluid.vapourPressure(celsius(usable(state, slots.returnTemperature))));
  for (let branch = 0; branch < slots.branchFlow.length; branch += 1) {
    push(air, branchFlowSignal(first, branch), usable(state, slots.branchFlow[branch] as number));
    push(air, branchPressureSignal(first, branch), usable(state, slots.branchReturnPressure[branch] as number));
  }
}

/**
 * A barometer that is lost, or comes back, moves every gauge reading by what the estimate of ambient was off (kilopascals):
 * no step of the plant, and nothing before it is comparable.
 */
function forgetWhereAmbientChanged({ air, slots, state, unitIndex }: UnitContext): void {
  const reasons = slots.separatorPressure < 0 ? 0 : (state.reasons[slots.separatorPressure] as number);
  const estimated = (reasons & reasonBit.ambientEstimated) === 0 ? 0 : 1;
  if (estimated === air.estimated[unitIndex]) return;
  air.estimated[unitIndex] = estimated;
  forgetAir(air, unitIndex);
}

function push({ noise, rings }: AirMemory, signal: number, value: number): void {
  noise.learn(signal, value - rings.push(signal, value));
}

/** Water in the tanks of all units on the loop, its own included: what only walks from one unit to another is no gain. */
function loopWater(context: UnitContext, ownWater: number): number {
  const { site, unit, unitIndex } = context;
  let sum = ownWater;
  for (const index of site.loops[unit.loop]?.units ?? []) if (index !== unitIndex) sum += tankWater(context, index);
  return sum;
}

/**
 * Water in both tanks, so that water that only moves from one to the other does not count; in the separator alone
 * where the supply tank's level or area is not known, and then not while the pump that empties it is said to stand.
 */
function tankWater({ allSlots, site, state }: UnitContext, index: number): number {
  const slots = allSlots[index];
  const design = site.units[index]?.design;
  if (slots === undefined || design === undefined) return Number.NaN;
  const separator = usable(state, slots.separatorLevel) * (design.separatorAreaM2 ?? Number.NaN);
  if (design.supplyTankAreaM2 === null || slots.supplyTankLevel < 0) {
    return usable(state, slots.pumpRunning) < 0.5 ? Number.NaN : separator;
  }
  return separator + usable(state, slots.supplyTankLevel) * design.supplyTankAreaM2;
}

/** NaN where level or area is not known. */
const separatorWater = ({ slots, state, unit }: UnitContext): number =>
  usable(state, slots.separatorLevel) * (unit.design.separatorAreaM2 ?? Number.NaN);

/** Needs a loop meter in the return and a supply-side meter in every branch. */
function returnExcess(context: UnitContext): number {
  const { slots, state, unit } = context;
  if (unit.flowMeterSide !== 'return' || slots.branchFlow.length === 0) return Number.NaN;
  let supply = 0;
  for (let branch = 0; branch < slots.branchFlow.length; branch += 1) {
    supply += usable(state, slots.branchFlow[branch] as number);
  }
  return usable(state, slots.loopFlow) - supply;
}
