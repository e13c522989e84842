import { badBits, reasonBit } from '../../slots/quality-reasons';
import { everyShape, type UnitEntry } from '../entry';
import { usable, type UnitContext } from '../judge-context';
import { stoppedModes } from '../modes-of-rules';
import { Verdict } from '../verdict';

/** Below this share of rated flow water stands, and takes on what lies around it: own rule. */
const flowing = 0.3;

/**
 * Temperatures of the exchanger cross: the loop's water leaves colder than the facility's comes, or the facility's leaves warmer than the
 * loop's comes, which is an effectiveness above 1. Beyond the uncertainty of the thermometers that is a sensor's fault.
 */
export const ins4: UnitEntry = {
  id: 'INS-4',
  title: 'Temperatures of the exchanger cross',
  cause: 'A thermometer is off, sits in the wrong pocket or on the wrong pipe, or two of them are exchanged.',
  consequence: 'UA, effectiveness and fouling have no value, so that a fouled exchanger is not seen.',
  action: everyShape(
    'Compare the four thermometers of the exchanger with a hand instrument, and have the one that is off put right.',
  ),
  confirm: 'With flow on both sides each water must leave between the two that come in.',
  timeToRespondS: 3 * 86_400,
  severity: 'minor',
  worse: null,
  latching: false,
  defaults: { limit: 0, deadband: 0, onDelayMs: 10 * 60_000, offDelayMs: 10 * 60_000 },
  unitOfMeasure: 'K',
  basis:
    'Second law: in counterflow no water leaves beyond the other’s inlet; judged beyond twice the standard uncertainty (JCGM 100).',
  feeds: [
    'supply.temperature',
    'return.temperature',
    'facility.supply.temperature',
    'facility.return.temperature',
    'loop.flow',
  ],
  offInModes: [...stoppedModes, 'starting', 'powerReturn'],
  offWhenInferred: true,
  applies: (_unit, slots) => slots.lmtd >= 0 && slots.loopFlow >= 0,
  judge(context, limits, _active, finding) {
    const { slots, state } = context;
    finding.value = leastTerminalDifference(context);
    finding.limit = limits.limit;
    if (!flows(context)) {
      finding.verdict = Verdict.hold;
      return;
    }
    const reasons = (state.reasons[slots.lmtd] ?? 0) & badBits;
    const known = reasons === 0 || reasons === reasonBit.undefined;
    finding.verdict = reasons === reasonBit.contradicted ? Verdict.yes : known ? Verdict.no : Verdict.hold;
  },
};

function flows({ slots, state, unit }: UnitContext): boolean {
  const facility = slots.facilityFlow < 0 ? Infinity : usable(state, slots.facilityFlow);
  const least = flowing * unit.design.ratedFlowM3PerS;
  return usable(state, slots.loopFlow) >= least && facility > 0.02 * least;
}

function leastTerminalDifference({ slots, state }: UnitContext): number {
  const warm = usable(state, slots.returnTemperature) - usable(state, slots.facilityReturnTemperature);
  const cold = usable(state, slots.supplyTemperature) - usable(state, slots.facilitySupplyTemperature);
  return Math.min(warm, cold);
}
