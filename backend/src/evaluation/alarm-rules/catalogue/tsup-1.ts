import { judgeAbove } from '../above';
import { anyOf } from '../any-of';
import type { UnitEntry } from '../entry';
import { supplyRiseRate, usable } from '../judge-context';
import { stoppedModes } from '../modes-of-rules';
import { awaitsSetPoint, followedSetPointC, toldSetPointC } from '../plant-signs/supply-set-point';
import { supplyOfSwappedPair } from '../plant-signs/swapped-pair';
import { Verdict } from '../verdict';

/** Fastest rise that the controls make by themselves is well below it: K/s. */
export const riseLimitKPerS = 2 / 60;
/** Once true, the rise counts as ended below this share of its limit. */
const riseEndShare = 0.5;

/**
 * Supply water too warm, or warming fast. `limit` is K above the set point, the measured one where there is one. What is shown is the temperature against its
 * limit where that is passed, and else the rate of rise against its own. A supply on its way up to a set point that people raised does
 * as it is told: its rise counts from the deadband above a measured set point on, which a loss of facility water that began at the set
 * point has passed before its rate is known, and a loop that runs over a little has not. Held back where the sensor is certainly swapped with that of
 * the return, which tells a supply within the limit: INS-3 tells of it.
 */
export const tsup1: UnitEntry = {
  id: 'TSUP-1',
  title: 'Supply water too warm, or warming fast',
  cause:
    'Facility water lost or warm, exchanger fouled, the facility control valve not where it is told to be, or a set point lower than the plant can hold.',
  consequence: 'Chips lose their margin; when facility water is lost they throttle within minutes.',
  action: {
    a: 'Check the facility flow and the valve position against its command; call the plant room if facility water is lost, and shed load.',
    b: 'Check the facility flow and the valve position against its command; call the plant room if facility water is lost, and shed load.',
    c: 'Check the facility flow and the valve position against its command; call the plant room if facility water is lost, and shed load.',
  },
  confirm:
    'Compare the facility supply and return temperatures: where facility flow is lost the return runs to the loop’s return.',
  timeToRespondS: 5 * 60,
  severity: 'severe',
  worse: null,
  latching: false,
  defaults: { limit: 2, deadband: 0.5, onDelayMs: 10_000, offDelayMs: 60_000 },
  unitOfMeasure: 'Cel',
  basis:
    'Proposal of this project: a load step of 40 % moves a sound plant by 0.8 K; losing facility water by 4 K in 20 s. A set point that was lowered is followed at 0.5 K/min. A rise counts only where the supply is its deadband above a measured set point: below that it may be following one that was raised.',
  feeds: ['supply.temperature', 'supply.setPoint'],
  offInModes: stoppedModes,
  offWhenInferred: true,
  judge(context, limits, active, finding) {
    const setPoint = followedSetPointC(context);
    finding.value = usable(context.state, context.slots.supplyTemperature);
    const rate = supplyRiseRate(context);
    const onItsWay = finding.value <= toldSetPointC(context) + (active ? 0 : limits.deadband);
    const rising = onItsWay ? Verdict.no : judgeRise(rate, active);
    if (Number.isNaN(setPoint)) {
      finding.verdict = Number.isNaN(finding.value) ? Verdict.hold : rising;
    } else {
      finding.limit = setPoint + limits.limit;
      const warm = awaitsSetPoint(context)
        ? notYet(active)
        : judgeAbove(finding.value, finding.limit, limits.deadband, active);
      finding.verdict = anyOf(warm, rising);
      // Asked only where it would change something.
      if ((active || finding.verdict === Verdict.yes) && supplyOfSwappedPair(context) <= finding.limit) {
        finding.verdict = active ? Verdict.hold : Verdict.no;
        return;
      }
      if (warm === Verdict.yes) return;
    }
    if (rising !== Verdict.yes) return;
    finding.value = rate;
    finding.limit = riseLimitKPerS;
    finding.unitOfMeasure = 'K/s';
  },
};

/** What is not known yet raises nothing and says nothing against the other half; but it ends nothing either. */
const notYet = (active: boolean): Verdict => (active ? Verdict.hold : Verdict.no);

function judgeRise(rate: number, active: boolean): Verdict {
  if (Number.isNaN(rate)) return notYet(active);
  return rate > (active ? riseLimitKPerS * riseEndShare : riseLimitKPerS) ? Verdict.yes : Verdict.no;
}
