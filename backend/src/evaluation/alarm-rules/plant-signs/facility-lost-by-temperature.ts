import type { Finding, UnitContext } from '../judge-context';
import { facilityRiseRate, supplyRiseRate, usable } from '../judge-context';
import { Verdict } from '../verdict';

/** Without facility flow its outlet takes the temperature of the loop's return, to within so much: K. */
const dead = 1.5;
/** The return has to stand so far above the facility's supply for that to say anything: K. */
const telling = 4;
/** And the supply has to run away, faster than the controls let it: K/s. */
const runaway = 2 / 60;

/**
 * Facility flow without a meter: its outlet stands at the loop's return temperature and the supply runs away. Little flow does
 * the first alone (at low load, with a nearly shut valve), so both are asked for; once raised, the first alone holds it. Warm
 * facility water takes the supply with it: so the supply has to run away from the facility's inlet.
 */
export function judgeByTemperatures(context: UnitContext, active: boolean, finding: Finding): void {
  const { slots, state } = context;
  const outlet = usable(state, slots.facilityReturnTemperature);
  const back = usable(state, slots.returnTemperature);
  const inlet = usable(state, slots.facilitySupplyTemperature);
  if (Number.isNaN(outlet + back + inlet)) return;
  finding.value = outlet;
  finding.limit = back - dead;
  finding.unitOfMeasure = 'Cel';
  const standsDead = outlet > finding.limit && back - inlet > telling;
  const inletRise = facilityRiseRate(context);
  const runsAway = active || supplyRiseRate(context) - Math.max(0, inletRise) > runaway;
  finding.verdict = standsDead && runsAway ? Verdict.yes : Verdict.no;
}
