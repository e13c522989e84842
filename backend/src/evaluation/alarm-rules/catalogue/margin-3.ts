import { clockDay } from '../details/clock-time';
import { joined, pressureText } from '../details/quantity-text';
import { everyShape, type GroupEntry } from '../entry';
import type { GroupContext } from '../group-context';
import { judgeBelow } from '../below';
import { usable } from '../judge-context';
import { saysNothing } from '../says-nothing';
import { ambientFellPa } from '../slow-means';
import { Verdict } from '../verdict';

/** A barometer so far below its mean of hours is worth naming, Pa. */
const worthNamingPa = 200;

/** The unit whose margin is first at its limit, with the seconds until then, and how many more follow; unit −1: none. */
interface Soonest {
  readonly unit: number;
  readonly leftS: number;
  readonly more: number;
  /** The trend of a unit is not known, though it should be. */
  readonly unknown: boolean;
}

/**
 * The vacuum margin of a unit of the hall falls and will be at the limit of MARGIN-1 within `limit`, s, by its trend of some hours.
 * One for the whole hall: weather moves all units alike. What has passed its limit is told by MARGIN-1.
 */
export const margin3: GroupEntry = {
  id: 'MARGIN-3',
  per: 'hall',
  title: 'Vacuum margin falls towards its limit',
  cause: 'Barometer falling while set points are absolute, or a regulator or vacuum source that drifts.',
  consequence: 'The margin alarm of each unit follows at the time shown.',
  action: everyShape(
    'Lower the supply set pressures of the hall before the time shown; let no work on the loops begin that would last beyond it.',
  ),
  confirm: 'Compare the barometer’s fall of the last hours with that of the margins, and look at the forecast.',
  timeToRespondS: 3600,
  severity: 'minor',
  worse: null,
  latching: false,
  defaults: { limit: 8 * 3600, deadband: 2 * 3600, onDelayMs: 5 * 60_000, offDelayMs: 15 * 60_000 },
  unitOfMeasure: 's',
  basis:
    'Theil–Sen slope of four hours, and only where Mann–Kendall finds a trend. A shift of eight hours ahead: own rule.',
  feeds: ['ambient.pressure', 'supplyTank.pressure', 'separator.pressure'],
  judge(context, limits, active, finding) {
    const soonest = soonestOf(context);
    finding.limit = limits.limit;
    if (soonest.unit < 0) {
      finding.verdict = soonest.unknown ? Verdict.hold : Verdict.no;
      return;
    }
    finding.value = soonest.leftS;
    finding.where = context.site.units[soonest.unit]?.name ?? null;
    finding.verdict = judgeBelow(soonest.leftS, limits.limit, limits.deadband, active);
  },
  detail(context) {
    const { nowMs, site } = context;
    const { leftS, more, unit } = soonestOf(context);
    if (unit < 0) return null;
    const fell = ambientFellPa(context, context.group);
    return joined(
      `Margin to limit at ${clockDay(nowMs + leftS * 1000, nowMs, site.timeZone)}: ${site.units[unit]?.name ?? ''}.`,
      more === 0 ? null : `${more} more of the hall ${more === 1 ? 'follows' : 'follow'}.`,
      fell > worthNamingPa ? `The barometer stands ${pressureText(fell)} below its mean of the last hours.` : null,
    );
  },
};

function soonestOf({ state, unitSlots, units }: GroupContext): Soonest {
  let soonest = -1;
  let leftS = Number.POSITIVE_INFINITY;
  let ahead = 0;
  let unknown = false;
  for (const unit of units) {
    const slot = unitSlots[unit]?.marginTimeToLimit ?? -1;
    const left = usable(state, slot);
    if (Number.isNaN(left)) {
      unknown ||= slot >= 0 && !saysNothing(state, slot);
      continue;
    }
    if (!(left > 0)) continue;
    ahead += 1;
    if (left >= leftS) continue;
    leftS = left;
    soonest = unit;
  }
  return { unit: soonest, leftS, more: Math.max(0, ahead - 1), unknown };
}
