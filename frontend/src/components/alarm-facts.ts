import type { Alarm, AlarmState } from '@ebbline/shared/contract/alarm';
import type { DisplayUnit } from '../text/display-unit';
import { formatNumber } from '../text/format-number';
import { formatByUnit, inWords } from '../text/format-quantity';
import { inUnit } from '../text/shown-unit';

const waiting: readonly AlarmState[] = ['unacknowledged', 'returnedUnacknowledged', 'latchedUnacknowledged'];

/** True where somebody still has to say that they have seen it. */
export const needsAcknowledgement = (state: AlarmState): boolean => waiting.includes(state);

/** True where the condition has gone and the alarm still stands. */
export const isGone = (state: AlarmState): boolean => state === 'returnedUnacknowledged' || isLatched(state);

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

const share = (of: string): DisplayUnit => ({ unit: `% ${of}`, factor: 100, decimals: 0 });
const multiple = (of: string): DisplayUnit => ({ unit: `× ${of}`, factor: 1, decimals: 2 });

/** Entries that judge a plain number: the code of its unit alone would not say of what it is a share or a count. */
const plain: { readonly [entry: string]: DisplayUnit } = {
  'AIR-3': { unit: 'open hoses', factor: 1, decimals: 1 },
  'BAL-1': { unit: '× standard uncertainty', factor: 1, decimals: 1 },
  'CHANGE-1': { unit: '× the limit', factor: 1, decimals: 1 },
  'CHANGE-2': { unit: '× the limit', factor: 1, decimals: 1 },
  'CHEM-2': { unit: 'pH', factor: 1, decimals: 2 },
  'FIL-1': multiple('clean'),
  'FIL-2': multiple('clean'),
  'FLOW-1': share('of the expected flow'),
  'FLOW-3': share('of its share of the flow'),
  'HX-1': { unit: '%', factor: 100, decimals: 0 },
  'INS-2': share('of what the barometer does'),
  'INS-3': { unit: '× standard uncertainty', factor: 1, decimals: 1 },
  'PUMP-3': { unit: '%', factor: 100, decimals: 0 },
  'RTH-1': multiple('commissioned'),
  'TANK-2': share('of its room'),
  'TANK-3': share('of its usual level'),
  'VALVE-1': share('open'),
  'VENT-1': share('open'),
};
/** Entries whose limit is what was told, not where an alarm begins. */
const told: readonly string[] = ['VALVE-1', 'VENT-1'];

/** How a plain number of such an entry is read; undefined for every other. */
export const plainDisplay = (entry: string): DisplayUnit | undefined => plain[entry];

/** True where a flow that an entry judges is gas, and must be said as free air. */
export const isOfFreeAir = (entry: string): boolean => entry.startsWith('AIR-') || entry === 'PERMIT-1';

/**
 * A value or limit of an alarm or alert with its unit. Gas flows must say that they are free air.
 * @param finer so many decimals more than usual
 */
export function sayAlarmValue(entry: string, value: number, ucum: string | null, finer = 0): string {
  const display = ucum === '1' ? plain[entry] : undefined;
  if (display !== undefined)
    return `${formatNumber(inUnit(value, display), display.decimals + finer)}\u00a0${display.unit}`;
  return inWords(formatByUnit(value, ucum, isOfFreeAir(entry), finer));
}

/**
 * Value when raised against its limit, each with its unit; null where there is nothing to compare (a yes or no). Where both would read
 * alike they are said finer: an alarm that stands has crossed its limit.
 */
export function sayValueAgainstLimit(
  alarm: Pick<Alarm, 'entry' | 'value' | 'limit' | 'unit_of_measure'>,
): string | null {
  const say = (value: number, finer = 0): string => sayAlarmValue(alarm.entry, value, alarm.unit_of_measure, finer);
  if (isYesNo(alarm)) return null;
  if (alarm.value === null) return alarm.limit === null ? null : `limit ${say(alarm.limit)}`;
  if (alarm.limit === null) return say(alarm.value);
  const against = told.includes(alarm.entry) ? ', told to stand at' : ' against a limit of';
  const { value, limit } = alarm;
  const finer = [0, 1, 2].find((more) => say(value, more) !== say(limit, more)) ?? 0;
  return `${say(value, finer)}${against} ${say(limit, finer)}`;
}
