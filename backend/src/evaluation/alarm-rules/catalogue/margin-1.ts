import { judgeBelow } from '../below';
import type { UnitEntry } from '../entry';
import { nodePressureFeeds } from '../node-pressure-feeds';
import { clockDay } from '../details/clock-time';
import { joined } from '../details/quantity-text';
import { guard, placeOf, usable, type UnitContext } from '../judge-context';
import { ventedText, ventedUnderPermit } from '../vented-under-permit';
import { Verdict } from '../verdict';

/** Vacuum margin small: worst of running and stopped, less its expanded uncertainty. Never suppressed by mode. */
export const margin1: UnitEntry = {
  id: 'MARGIN-1',
  title: 'Vacuum margin small',
  cause:
    'Supply tank regulator or bleed has moved, supply tank overfilled, barometer falling while set points are absolute, vacuum sources losing, or the static head that a stop would leave.',
  consequence: 'With a little less margin an opened line would let water out instead of air in.',
  action: {
    a: 'Lower the set pressure of the supply tank until the margin is back; keep the vacuum source running. Then find what moved. In this plant a slower pump does nothing for the margin.',
    b: 'Lower the discharge pressure of the tanks until the margin is back; keep the vacuum source running. Then find what moved.',
    c: 'Slow the circulation pump until the margin is back, not below the flow that the chips need; keep the vacuum source running. Then find what moved.',
  },
  confirm:
    'Compare the supply tank pressure with the supply pressure less the head between them, and the barometer with the neighbouring halls.',
  timeToRespondS: 8 * 60,
  severity: 'severe',
  worse: null,
  latching: false,
  defaults: { limit: 5000, deadband: 1000, onDelayMs: 10_000, offDelayMs: 15_000 },
  unitOfMeasure: 'Pa',
  basis: 'Proposal of this project: the largest weather change of half a day (2.8 kPa) and as much again.',
  feeds: [...nodePressureFeeds, 'ambient.pressure'],
  offInModes: [],
  offWhenInferred: false,
  judge(context, limits, active, finding) {
    const slot = context.slots.vacuumMarginWorst;
    finding.value = usable(context.state, slot) - guard(context.state, slot);
    finding.limit = limits.limit;
    finding.verdict = judgeBelow(finding.value, limits.limit, limits.deadband, active);
    if (finding.verdict === Verdict.no) return;
    finding.where = placeOf(context.state, context.holder, slot);
    finding.expected = ventedUnderPermit(context);
  },
  detail: (context) => joined(ventedText(context), timeToLimit(context)),
};

/** Where the margin goes on falling as it does: when it is at its limit. Nothing once it is below. */
function timeToLimit({ nowMs, site, slots, state }: UnitContext): string | null {
  const seconds = usable(state, slots.marginTimeToLimit);
  return seconds > 0 && Number.isFinite(seconds)
    ? `Margin to limit at ${clockDay(nowMs + seconds * 1000, nowMs, site.timeZone)}.`
    : null;
}
