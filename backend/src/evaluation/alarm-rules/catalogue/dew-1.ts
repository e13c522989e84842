import { judgeBelow } from '../below';
import { everyShape, type UnitEntry } from '../entry';
import { usable } from '../judge-context';

/** Coldest wetted surface close to the dew point. Never suppressed by mode. */
export const dew1: UnitEntry = {
  id: 'DEW-1',
  title: 'Water may condense on cold surfaces',
  cause: 'Humid hall air, or facility or supply water too cold.',
  consequence: 'Condensation on pipes and manifolds; it drips where live equipment stands below.',
  action: everyShape(
    'Raise the supply set point, and have the hall air dried. Where a facility pipe is the coldest, ask the plant room for warmer water.',
  ),
  confirm:
    'Feel the coldest facility pipe and look under its insulation; compare the humidity with a hand instrument at the manifold.',
  timeToRespondS: 15 * 60,
  severity: 'major',
  worse: null,
  latching: false,
  defaults: { limit: 2, deadband: 0.5, onDelayMs: 120_000, offDelayMs: 60_000 },
  unitOfMeasure: 'K',
  basis: 'A margin of 2 to 3 K is common practice.',
  feeds: ['supply.temperature', 'facility.supply.temperature', 'hall.temperature', 'hall.humidity'],
  offInModes: [],
  offWhenInferred: false,
  judge(context, limits, active, finding) {
    finding.value = usable(context.state, context.slots.dewPointMargin);
    finding.limit = limits.limit;
    finding.verdict = judgeBelow(finding.value, limits.limit, limits.deadband, active);
  },
};
