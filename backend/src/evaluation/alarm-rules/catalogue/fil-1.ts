import { judgeAbove } from '../above';
import { anyOf } from '../any-of';
import { judgeBelow } from '../below';
import { clockDay } from '../details/clock-time';
import { joined } from '../details/quantity-text';
import type { UnitEntry } from '../entry';
import { holdWhileBad } from '../hold-while-bad';
import { usable, type UnitContext } from '../judge-context';
import { stoppedModes } from '../modes-of-rules';
import { saysNothing } from '../says-nothing';
import { Verdict } from '../verdict';
import { fil2 } from './fil-2';

/** A filter that will be at its limit within so much time is told early: s. A change takes a day to plan. */
const aheadS = 3 * 86_400;
const aheadEndS = 4 * 86_400;
/** But only once it has begun to load: a trend of a clean filter is a trend of noise. */
const hasBegun = 1.1;

/** Filter loading: resistance at equal flow above `limit` times clean, mean of ten minutes; or its limit ahead within three days. */
export const fil1: UnitEntry = {
  id: 'FIL-1',
  title: 'Filter is loading',
  cause: 'Particles after works or a change of hoses, slime, or products of corrosion.',
  consequence:
    'The transfer pump runs faster until it can no more; then the supply tank falls while flow and chips look well.',
  action: {
    a: 'Change over to the clean filter, or plan the change of the element. Watch the supply tank level and the pump speed until then.',
    b: 'Change over to the clean filter, or plan the change of the element. Watch the time that a transfer takes until then.',
    c: 'Change over to the clean filter, or plan the change of the element. Watch loop flow and pump speed until then.',
  },
  confirm: 'Compare the pressure drop at the present flow with that of the clean filter at the same flow.',
  timeToRespondS: 86_400,
  severity: 'minor',
  worse: null,
  latching: false,
  defaults: { limit: 2, deadband: 0.2, onDelayMs: 0, offDelayMs: 60_000 },
  unitOfMeasure: '1',
  basis: 'A change at twice the clean resistance is common practice.',
  feeds: ['filter.pressureDrop', 'transfer.flow', 'loop.flow'],
  offInModes: stoppedModes,
  offWhenInferred: true,
  applies: (_unit, slots) => slots.filterResistance >= 0,
  judge(context, limits, active, finding) {
    finding.value = context.plant.filterResistance.mean(context.unitIndex);
    finding.limit = limits.limit;
    const { slots, state } = context;
    const loaded = judgeAbove(finding.value, limits.limit, limits.deadband, active);
    finding.verdict = anyOf(
      holdWhileBad(state, slots.filterResistance, loaded),
      judgeAhead(context, finding.value, active),
    );
  },
  detail(context) {
    const resistance = context.plant.filterResistance.mean(context.unitIndex);
    return joined(
      Number.isNaN(resistance) ? null : `Filter ${resistance.toFixed(1)} times clean.`,
      whenFull(context, resistance),
    );
  },
};

/** No trend, no limit ahead. A time to the limit that is not known, as its trend is lost, raises nothing and ends nothing. */
function judgeAhead({ slots, state }: UnitContext, resistance: number, active: boolean): Verdict {
  const left = usable(state, slots.filterTimeToLimit);
  if (slots.filterTimeToLimit < 0 || resistance < hasBegun || saysNothing(state, slots.filterTimeToLimit))
    return Verdict.no;
  if (Number.isNaN(left + resistance)) return active ? Verdict.hold : Verdict.no;
  return judgeBelow(left, aheadS, aheadEndS - aheadS, active);
}

/** Day and hour of both limits, on a straight line through what was watched. Null where none is ahead. */
function whenFull({ nowMs, site, slots, state, unit }: UnitContext, resistance: number): string | null {
  const left = usable(state, slots.filterTimeToLimit);
  const limit = unit.limits.get('FIL-1')?.limit ?? fil1.defaults.limit;
  const last = unit.limits.get('FIL-2')?.limit ?? fil2.defaults.limit;
  if (!(left > 0)) return null;
  const at = (secondsAhead: number): string => clockDay(nowMs + secondsAhead * 1000, nowMs, site.timeZone);
  const then = left * ((last - resistance) / (limit - resistance));
  return `If it goes on so: ${limit} times clean at ${at(left)}${then > left ? `, ${last} times at ${at(then)}` : ''}.`;
}
