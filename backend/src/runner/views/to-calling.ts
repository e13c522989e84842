import type { AlarmState } from '@ebbline/shared/contract/alarm';
import { mostCallingListed, type Calling } from '@ebbline/shared/contract/live-feed';
import type { PictureScene, ShownAlarm } from './scene';
import { timeText } from './time-text';

/** States that nobody has seen yet and in which the condition holds or is latched: those that are annunciated. */
const callingStates: readonly AlarmState[] = ['unacknowledged', 'latchedUnacknowledged'];

/** The alarms that call for a person, of many the most urgent, newest first; null where none does. */
export function toCalling(scene: PictureScene): Calling | null {
  const calling = scene.alarms().filter(isCalling);
  if (calling.length === 0) return null;
  const newest = calling
    .sort((a, b) => a.record.priority - b.record.priority || newestFirst(a, b))
    .slice(0, mostCallingListed)
    .sort(newestFirst)
    .map(({ record }) => ({
      id: record.alarm,
      unit: record.unit,
      title: scene.textsOf(record).title,
      where: record.where,
      priority: record.priority,
      since: timeText(record.stateSinceMs) ?? new Date(0).toISOString(),
    }));
  return { total: calling.length, newest };
}

/** True where nobody has seen it yet, and where it follows from no other. */
export const isCalling = ({ record }: ShownAlarm): boolean =>
  record.foldedUnder === null && callingStates.includes(record.state);

const newestFirst = (a: ShownAlarm, b: ShownAlarm): number =>
  b.record.stateSinceMs - a.record.stateSinceMs || a.record.priority - b.record.priority;
