import { judgeDiscrete } from '../discrete';
import type { UnitEntry } from '../entry';
import { usable } from '../judge-context';

const caution = 'Keep clear of water near live equipment; local electrical rules and the site’s procedure come first.';
const reset = 'When the place is dry and the alarm acknowledged, acknowledge once more to reset it.';

/** Water found: a rope or tray is wet. Latches. Never suppressed by mode. */
export const water1: UnitEntry = {
  id: 'WATER-1',
  title: 'Water found',
  cause:
    'Facility pipe, the unit’s own part above ambient pressure, condensation, the roof, or an isolated branch; the loop itself only where its vacuum margin is zero or less.',
  consequence: 'Water reaches live equipment.',
  action: {
    a: `Keep the vacuum source running, shut the facility water to this unit, and look. Two signs before a row is stopped. ${caution} ${reset}`,
    b: `Keep the vacuum source and the tank change-over running, shut the facility water to this unit, and look. Two signs before a row is stopped. ${caution} ${reset}`,
    c: `Keep the vacuum source running, shut the facility water to this unit, and look. Two signs before a row is stopped. ${caution} ${reset}`,
  },
  confirm:
    'Look at the rope or tray and follow the water up; compare the vacuum margin, the sum of levels and the top-up.',
  timeToRespondS: 60,
  severity: 'severe',
  worse: null,
  latching: true,
  defaults: { limit: 1, deadband: 0, onDelayMs: 2000, offDelayMs: 5000 },
  unitOfMeasure: '1',
  basis: 'Discrete; water near live equipment is dangerous in itself.',
  feeds: ['water.found'],
  offInModes: [],
  offWhenInferred: false,
  judge(context, _limits, _active, finding) {
    finding.value = usable(context.state, context.slots.waterFound);
    finding.limit = 1;
    finding.verdict = judgeDiscrete(finding.value);
  },
};
