import { judgeAbove } from '../above';
import type { UnitEntry } from '../entry';
import { guard, usable } from '../judge-context';
import { stoppedModes } from '../modes-of-rules';
import { supplyOfSwappedPair } from '../plant-signs/swapped-pair';
import { Verdict } from '../verdict';
import { rideThroughText } from '../plant-signs/ride-through-text';

/** Supply at the limit of the racks’ class, less its expanded uncertainty. `limit` is K above the class. */
export const tsup2: UnitEntry = {
  id: 'TSUP-2',
  title: 'Supply water at the limit of its class',
  cause: 'Facility water lost or warm, exchanger fouled, or the facility control valve not where it is told to be.',
  consequence: 'The racks are not made for warmer water: chips throttle, then trip.',
  action: {
    a: 'Shed load now. Then facility flow and control valve: open it by hand if it stands wrong. Hot pipes: mind burns.',
    b: 'Shed load now. Then facility flow and control valve: open it by hand if it stands wrong. Hot pipes: mind burns.',
    c: 'Shed load now. Then facility flow and control valve: open it by hand if it stands wrong. Hot pipes: mind burns.',
  },
  confirm: 'Compare with the branch return and chip temperatures. Do not feel pipes by hand: they may burn.',
  timeToRespondS: 2 * 60,
  severity: 'severe',
  worse: null,
  latching: false,
  defaults: { limit: 0, deadband: 0.5, onDelayMs: 10_000, offDelayMs: 30_000 },
  unitOfMeasure: 'Cel',
  basis:
    'Facility classes of the racks: ASHRAE TC 9.9, S classes by supply temperature (from memory), as the site file states.',
  feeds: ['supply.temperature'],
  offInModes: stoppedModes,
  offWhenInferred: true,
  applies: (unit, slots) => unit.design.supplyClassLimitC !== null && slots.supplyTemperature >= 0,
  judge(context, limits, active, finding) {
    const slot = context.slots.supplyTemperature;
    finding.value = usable(context.state, slot);
    finding.limit = (context.unit.design.supplyClassLimitC ?? Number.NaN) + limits.limit - guard(context.state, slot);
    if (supplyOfSwappedPair(context) <= finding.limit) finding.verdict = active ? Verdict.hold : Verdict.no;
    else finding.verdict = judgeAbove(finding.value, finding.limit, limits.deadband, active);
  },
  detail: (context) => rideThroughText(context),
};
