import { freeAirText, joined, litresText } from '../details/quantity-text';
import { usable, type UnitContext } from '../judge-context';
import { AirSignal } from './air-memory';
import { airWasToldAt } from './second-opening';

/** Water that was pushed up is worth announcing from here on, m³. */
const worthTellingM3 = 0.003;
/** So long gas may be on its way from an opening to the exhaust: return main and separator come first. Own rule. */
const transitMs = 60_000;

/** Which rack, what the sources still carry, what the level will do, how warm chips get, and what a permit makes of it. */
export const airDetail = (context: UnitContext): string | null =>
  joined(rack(context), carried(context), levelFalls(context), onFans(context), beyondPermit(context));

function rack(context: UnitContext): string {
  const { air, alarm, memory, unit, unitIndex } = context;
  const named = air.namedBranch[unitIndex] as number;
  const branch = unit.branches[named];
  if (branch === undefined) return 'Air, no rack stands out.';
  const before = unit.branches.filter(
    (_, other) => other !== named && airWasToldAt(air, memory, unitIndex, alarm, other),
  );
  const beside = before.length === 0 ? '' : `; ${before.map(({ name }) => name).join(', ')} was told before`;
  return `Air, ${branch.name} probable${beside}.`;
}

function carried(context: UnitContext): string | null {
  const { slots, state } = context;
  const reserve = usable(state, slots.vacuumReserve);
  const openings = usable(state, slots.openingsCarried);
  const onItsWay = hosesOnTheirWay(context, reserve, reserve / openings);
  const more = openings - onItsWay;
  if (reserve < 0 || more < 0) return 'One source does not carry this opening: start the second one.';
  if (Number.isNaN(more)) return null;
  const all = usable(state, slots.openingsCarriedAll) - onItsWay;
  const withAll = Number.isNaN(all) ? '' : `, ${whole(all)} with all sources`;
  return `Carries this one and ${whole(more)} more on one source${withAll}.`;
}

/**
 * The reserve counts the gas that has reached the exhaust, and in the first seconds little has. So within a minute of the step
 * the gas to count is what came before it and one whole hose, or the measured load where that is more; later the
 * reserve is the truth, be the opening smaller. In hoses that the reserve leaves out.
 */
function hosesOnTheirWay(context: UnitContext, reserve: number, hose: number): number {
  const { air, nowMs, slots, state, unitIndex } = context;
  if (!(nowMs - (air.stepMs[unitIndex] as number) < transitMs) || !(hose > 0)) return 0;
  const counted = usable(state, slots.vacuumCapacity) - reserve;
  const toCome = (air.gasBeforeNewest[unitIndex] as number) + hose;
  const left = Math.max(toCome, usable(state, slots.gasLoad)) - counted;
  return Number.isNaN(left) ? 0 : Math.max(0, left / hose);
}

const whole = (openings: number): string => Math.max(0, Math.floor(openings)).toFixed(0);

/** Announced beforehand: who sees the level fall after isolating must not take it for a loss. */
function levelFalls({ air, unitIndex }: UnitContext): string | null {
  const signal = (air.firstSignal[unitIndex] as number) + AirSignal.tankWater;
  const risen = air.rings.at(signal, 0) - (air.waterBefore[unitIndex] as number);
  return risen > worthTellingM3
    ? `The level is up by ${litresText(risen)} and falls by as much when the rack is isolated: do not drain.`
    : null;
}

function onFans({ slots, state }: UnitContext): string | null {
  const temperature = usable(state, slots.temperatureOnFans);
  return Number.isNaN(temperature) ? null : `Chips without water are expected at ${temperature.toFixed(0)} °C on fans.`;
}

function beyondPermit({ permits, slots, state, unitIndex }: UnitContext): string | null {
  if (permits.count[unitIndex] === 0) return null;
  const baseline = permits.baselineM3PerS[unitIndex] as number;
  const planned = (Number.isNaN(baseline) ? 0 : baseline) + (permits.expectedM3PerS[unitIndex] as number);
  const beyond = usable(state, slots.gasLoad) - planned;
  return beyond > 0 ? `${freeAirText(beyond)} more than the permit.` : 'A permit is open on this unit.';
}
