import type { Alarm } from '@ebbline/shared/contract/alarm';
import type { Frame, LoopLine } from '@ebbline/shared/contract/live-feed';
import { orderAlarms } from '../../components/order-alarms';

/** The alarm that most needs a person, and how many more stand beside it. */
export interface WorstAlarm extends Pick<Alarm, 'title' | 'priority' | 'state'> {
  readonly more: number;
}

/** The worst that a frame tells of a unit, or of its hall where `unit` is null; null where it tells of none. */
export function worstInFrame(frame: Frame, unit: string | null): WorstAlarm | null {
  if (frame.screen === 'hall') return worstOfLines(frame.loops.filter((line) => unit === null || line.unit === unit));
  if (frame.screen === 'trends' || unit === null) return null;
  const alarms = frame.alarms.filter((alarm) => alarm.unit === unit);
  const [first] = orderAlarms(alarms);
  return first === undefined ? null : { ...named(first.alarm), more: alarms.length - 1 };
}

function worstOfLines(lines: readonly LoopLine[]): WorstAlarm | null {
  const worst = lines.flatMap((line) => line.worst ?? []).sort((one, other) => one.priority - other.priority)[0];
  if (worst === undefined) return null;
  const all = lines.reduce((sum, line) => sum + (line.worst === null ? 0 : 1 + line.moreAlarms), 0);
  return { ...named(worst), more: all - 1 };
}

const named = ({ title, priority, state }: Pick<Alarm, 'title' | 'priority' | 'state'>) => ({ title, priority, state });
