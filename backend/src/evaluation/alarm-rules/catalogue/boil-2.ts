import { judgeBelow } from '../below';
import { pressureText } from '../details/quantity-text';
import type { UnitEntry } from '../entry';
import { placeOf, usable } from '../judge-context';
import { holdUnseenPlate } from '../plant-signs/plate-wall-unseen';
import { boil1 } from './boil-1';
import { Verdict } from '../verdict';

/** The nearest lower wall is crossed: water boils at a node or a plate, or the pump's inlet has less head than it needs. */
export const boil2: UnitEntry = {
  id: 'BOIL-2',
  title: 'Water boils, or the pump cavitates',
  cause: boil1.cause,
  consequence: 'Gas at the plates and in the pump: the flow, at first more than before, collapses.',
  action: {
    a: 'Let the separator be drawn no deeper: raise its set pressure at once, by 5 kPa; the vacuum source itself keeps running. Shed load. Watch the vacuum margin while you do.',
    b: 'Let the tanks be drawn no deeper: raise their filling pressure at once, by 5 kPa; the vacuum source itself keeps running. Shed load. Watch the vacuum margin while you do.',
    c: 'Let the reservoir be drawn no deeper: raise its set pressure at once, by 5 kPa; the vacuum source itself keeps running. Shed load. Watch the vacuum margin while you do.',
  },
  confirm: boil1.confirm,
  timeToRespondS: 60,
  severity: 'severe',
  worse: null,
  latching: false,
  defaults: { limit: 0, deadband: 500, onDelayMs: 3000, offDelayMs: 10_000 },
  unitOfMeasure: 'Pa',
  basis:
    'Physics: below the vapour pressure water boils (IAPWS-IF97); below NPSH3 a pump loses head (ISO 9906). Evacuating is ended by the set point, not by the switch: a source that stands carries no opening. 5 kPa is what tells boiling from air (own rule).',
  feeds: boil1.feeds,
  offInModes: [],
  offWhenInferred: false,
  judge(context, limits, active, finding) {
    const slot = context.slots.lowerWallMargin;
    finding.value = usable(context.state, slot);
    finding.limit = limits.limit;
    finding.verdict = holdUnseenPlate(
      context,
      active,
      judgeBelow(finding.value, limits.limit, limits.deadband, active),
    );
    if (finding.verdict === Verdict.yes) finding.where = placeOf(context.state, context.holder, slot);
  },
  detail({ holder, slots, state }) {
    const margin = usable(state, slots.lowerWallMargin);
    const place = placeOf(state, holder, slots.lowerWallMargin);
    if (Number.isNaN(margin) || place === null) return null;
    return `${pressureText(Math.abs(margin))} ${margin < 0 ? 'below' : 'above'} its wall: ${place}. Gone with 5 kPa more, it was boiling; if not, look for air.`;
  },
};
