import { celsius } from '@ebbline/shared/units/quantity';
import { unitPlan } from '../../derive/unit-plan';
import { reasonBit } from '../../slots/quality-reasons';
import { usable, type UnitContext } from '../judge-context';
import { movingModes } from '../modes-of-rules';
import { AirSignal, branchFlowSignal, branchPressureSignal, forgetAir } from './air-memory';

/** Takes this tick's sample of every signal of the unit that tells of air. */
export function sampleAirSignals(context: UnitContext): void {
  const { slots, state } = context;
  const { fluid } = unitPlan(context.site, context.unitIndex);
  forgetWhereAmbientChanged(context);
  const first = context.air.firstSignal[context.unitIndex] as number;
  push(context, first + AirSignal.gasLoad, usable(state, slots.gasLoad));
  push(context, first + AirSignal.vacuumSpeed, usable(state, slots.vacuumSpeed));
  push(context, first + AirSignal.tankWater, tankWater(context, context.unitIndex));
  push(context, first + AirSignal.loopWater, loopWater(context));
  push(context, first + AirSignal.separatorWater, separatorWater(context));
  push(context, first + AirSignal.returnExcess, returnExcess(context));
  push(context, first + AirSignal.separatorPressure, usable(state, slots.separatorPressure));
  push(context, first + AirSignal.loopFlow, usable(state, slots.loopFlow));
  push(
    context,
    first + AirSignal.vapourPressure,
    fluid.vapourPressure(celsius(usable(state, slots.returnTemperature))),
  );
  for (let branch = 0; branch < slots.branchFlow.length; branch += 1) {
    push(context, branchFlowSignal(first, branch), usable(state, slots.branchFlow[branch] as number));
    push(context, branchPressureSignal(first, branch), usable(state, slots.branchReturnPressure[branch] as number));
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

function push(context: UnitContext, signal: number, value: number): void {
  const { noise, rings } = context.air;
  noise.learn(signal, value - rings.at(signal, 0));
  rings.push(signal, value);
}

/** Water in the tanks of all units on the loop: what only walks from one unit to another is no gain. */
function loopWater(context: UnitContext): number {
  const { site, unit } = context;
  let sum = 0;
  for (const index of site.loops[unit.loop]?.units ?? []) sum += tankWater(context, index);
  return sum;
}

/**
 * Water in both tanks, so that water that only moves from one to the other does not count; in the separator alone
 * where the supply tank's level or area is not known, and then not while the pump that empties it is said to stand.
 * Nothing while water is moved on purpose.
 */
function tankWater({ allSlots, mode, site, state }: UnitContext, index: number): number {
  if (movingModes.includes(mode)) return Number.NaN;
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
