import { guard, usable, type UnitContext } from '../judge-context';
import { chipsLoaded } from './chips-loaded';

/** Standard uncertainty of each of two sensors whose accuracy is not stated, K: class B at 40 °C (IEC 60751:2022), halved. */
const unstatedK = 0.25;
/** Flow is good above this share of the rated flow: less, and water stands long enough to take what the room gives. Own rule. */
const goodFlowShare = 0.5;
/** Heat that water takes up, J/(m³·K): 990 kg/m³ and 4180 J/(kg·K) at 40 °C, within 1 %. */
const heatCapacityJPerM3K = 4.14e6;
/** Heat of the pair read the other way round agrees with chip power within this share: what air takes, and meters. Own rule. */
const agreesWithin = 0.25;
/** A swap is beyond so many standard uncertainties. Common practice, no source. */
const leastSignificance = 3;

/**
 * How far the supply reads above the return, in standard uncertainties of the difference, while chips are loaded and flow is good: heat
 * removed would be negative. 0 where there is no such sign; NaN where an input is not known.
 */
export function negativeHeatSignificance(context: UnitContext): number {
  const { slots, state, unit } = context;
  const above = usable(state, slots.supplyTemperature) - usable(state, slots.returnTemperature);
  const flow = usable(state, slots.loopFlow);
  const loaded = chipsLoaded(context);
  if (Number.isNaN(above) || Number.isNaN(flow) || loaded === null) return Number.NaN;
  if (!loaded || above <= 0 || flow < goodFlowShare * unit.design.ratedFlowM3PerS) return 0;
  const u = Math.hypot(ofSensor(context, slots.supplyTemperature), ofSensor(context, slots.returnTemperature));
  return above / u;
}

const ofSensor = ({ state }: UnitContext, slot: number): number => guard(state, slot) / 2 || unstatedK;

/** Heat removed if the two were read the other way round, W. */
export const heatOtherWayW = ({ slots, state }: UnitContext): number =>
  heatCapacityJPerM3K *
  usable(state, slots.loopFlow) *
  (usable(state, slots.supplyTemperature) - usable(state, slots.returnTemperature));

/**
 * The pair is certainly swapped, so that the return sensor tells the supply: the supply cannot be the warmer one, and read the other
 * way round the heat removed is what the chips give off, which one sensor that is merely off would hit by chance only.
 * Gives the supply temperature, °C, as the return sensor tells it; NaN where it is not certain.
 */
export function supplyOfSwappedPair(context: UnitContext): number {
  if (!(negativeHeatSignificance(context) > leastSignificance)) return Number.NaN;
  const chips = usable(context.state, context.slots.chipPower);
  if (!(Math.abs(heatOtherWayW(context) - chips) <= agreesWithin * chips)) return Number.NaN;
  return usable(context.state, context.slots.returnTemperature);
}
