import { judgeAbove } from '../above';
import { percentText } from '../details/quantity-text';
import type { UnitEntry } from '../entry';
import { usable } from '../judge-context';
import { valveRestMs } from '../plant-signs/valve-rest';
import { Verdict } from '../verdict';

/** A valve that has moved within so much time is on its way to its command. A stroke takes about 100 s. */
const onItsWayMs = 10_000;

/** The facility valve stands elsewhere than it is told, by more than `limit` of its stroke, and does not move. */
export const valve1: UnitEntry = {
  id: 'VALVE-1',
  title: 'Facility control valve not where it is told to be',
  cause: 'Stuck, actuator without air or power, linkage loose, or turned by hand.',
  consequence: 'The supply temperature wanders with the load; after a rise in load it cannot be held.',
  action: {
    a: 'Take the valve in hand and set it by the supply temperature. Then look at actuator, air or power, and linkage.',
    b: 'Take the valve in hand and set it by the supply temperature. Then look at actuator, air or power, and linkage.',
    c: 'Take the valve in hand and set it by the supply temperature. Then look at actuator, air or power, and linkage.',
  },
  confirm: 'Look at the position on the valve itself, and whether the facility flow follows its command.',
  timeToRespondS: 15 * 60,
  severity: 'major',
  worse: null,
  latching: false,
  defaults: { limit: 0.05, deadband: 0.02, onDelayMs: 30_000, offDelayMs: 10_000 },
  unitOfMeasure: '1',
  basis: 'Feedback of valves is good to ±1 % of the stroke (common practice, no source).',
  feeds: ['valve.command', 'valve.position'],
  offInModes: ['off', 'vented', 'draining'],
  offWhenInferred: false,
  applies: (_unit, slots) => slots.valveCommand >= 0 && slots.valvePosition >= 0,
  judge(context, limits, active, finding) {
    const { slots, state } = context;
    const apart = usable(state, slots.valvePosition) - usable(state, slots.valveCommand);
    const rests = valveRestMs(context) >= onItsWayMs;
    finding.value = usable(state, slots.valvePosition);
    finding.limit = usable(state, slots.valveCommand);
    finding.verdict = judgeAbove(Math.abs(apart), limits.limit, limits.deadband, active);
    if (finding.verdict === Verdict.yes && !rests && !active) finding.verdict = Verdict.no;
  },
  detail({ slots, state }) {
    const position = usable(state, slots.valvePosition);
    const command = usable(state, slots.valveCommand);
    if (Number.isNaN(position + command)) return null;
    return `Told ${percentText(command)}, stands at ${percentText(position)}.`;
  },
};
