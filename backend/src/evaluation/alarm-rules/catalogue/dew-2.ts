import { judgeBelow } from '../below';
import { everyShape, type UnitEntry } from '../entry';
import { usable } from '../judge-context';

/** Coldest wetted surface at the dew point. Never suppressed by mode. */
export const dew2: UnitEntry = {
  id: 'DEW-2',
  title: 'Coldest surface at the dew point: condensation',
  cause: 'Hall air humid, facility water or supply water too cold.',
  consequence: 'It drips from pipes and manifolds where live equipment stands below.',
  action: everyShape(
    'Raise the supply set point at once, and have the hall air dried. Where a facility pipe is the coldest, ask the plant room for warmer water at once. Keep clear of water near live equipment; local electrical rules and the site’s procedure come first.',
  ),
  confirm: 'Look for drops at the coldest facility pipe and under its insulation.',
  timeToRespondS: 5 * 60,
  severity: 'severe',
  worse: null,
  latching: false,
  defaults: { limit: 0.5, deadband: 0.5, onDelayMs: 30_000, offDelayMs: 60_000 },
  unitOfMeasure: 'K',
  basis: 'Dew point by WMO-No. 8, annex 4.B; half a kelvin is what a good humidity sensor can tell (common practice).',
  feeds: ['supply.temperature', 'facility.supply.temperature', 'hall.temperature', 'hall.humidity'],
  offInModes: [],
  offWhenInferred: false,
  judge(context, limits, active, finding) {
    finding.value = usable(context.state, context.slots.dewPointMargin);
    finding.limit = limits.limit;
    finding.verdict = judgeBelow(finding.value, limits.limit, limits.deadband, active);
  },
};
