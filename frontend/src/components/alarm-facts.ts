import type { Alarm, AlarmState } from '@ebbline/shared/contract/alarm';
import { formatByUnit, formatPoint, inWords } from '../text/format-quantity';

const waiting: readonly AlarmState[] = ['unacknowledged', 'returnedUnacknowledged', 'latchedUnacknowledged'];

/** True where somebody still has to say that they have seen it. */
export const needsAcknowledgement = (state: AlarmState): boolean => waiting.includes(state);

/** True where the condition has gone and the alarm stays until a person resets it. */
export const isLatched = (state: AlarmState): boolean =>
  state === 'latchedUnacknowledged' || state === 'latchedAcknowledged';

/** The server takes a reset no sooner than this after the acknowledgement and after the condition went. ms. */
export const resetAfterMs = 10_000;

/** From when a latched alarm can be reset, ISO 8601; null where it is not latched or not yet acknowledged. */
export function resettableFrom(alarm: Pick<Alarm, 'state' | 'stateSince' | 'acknowledgedAt'>): string | null {
  if (alarm.state !== 'latchedAcknowledged') return null;
  const acknowledgedMs = alarm.acknowledgedAt === null ? 0 : Date.parse(alarm.acknowledgedAt);
  return new Date(Math.max(Date.parse(alarm.stateSince), acknowledgedMs) + resetAfterMs).toISOString();
}

/** True where value and limit are no more than a yes: the alarm itself says it. */
export function isYesNo(of: Pick<Alarm, 'value' | 'limit' | 'unit_of_measure'>): boolean {
  return of.unit_of_measure === '1' && (of.limit === null || (of.limit === 1 && (of.value === 1 || of.value === 0)));
}

/** Entries that judge a plain count: the code of its unit alone would not say of what. */
const counted: { readonly [entry: string]: string } = { 'AIR-3': 'openingsCarried' };

/** A value or limit of an alarm or alert with its unit. Gas flows must say that they are free air. */
export function sayAlarmValue(entry: string, value: number, ucum: string | null): string {
  const point = counted[entry];
  if (point !== undefined && ucum === '1') return inWords(formatPoint(point, value, null));
  return inWords(formatByUnit(value, ucum, entry.startsWith('AIR-')));
}

/** Value when raised against its limit, each with its unit; null where there is nothing to compare (a yes or no). */
export function sayValueAgainstLimit(
  alarm: Pick<Alarm, 'entry' | 'value' | 'limit' | 'unit_of_measure'>,
): string | null {
  const say = (value: number): string => sayAlarmValue(alarm.entry, value, alarm.unit_of_measure);
  if (isYesNo(alarm)) return null;
  if (alarm.value === null) return alarm.limit === null ? null : `limit ${say(alarm.limit)}`;
  return alarm.limit === null ? say(alarm.value) : `${say(alarm.value)} against a limit of ${say(alarm.limit)}`;
}
