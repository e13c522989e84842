import type { AlertChange } from '../../evaluation/pipeline/alert-record';
import type { JournalEntry } from './journal-entry';
import { storedNumber, storedText } from './stored-text';
import { nothing } from './to-journal-entry';

/** Causes of the rows of an alert. */
const causes = { came: 'alertCame', went: 'alertWent' } as const;
export const alertWent = causes.went;
export const isOfAlert = (cause: string | null): boolean => cause === causes.came || cause === causes.went;

/** Alerts stand beside the alarms of the same name, under names that no alarm can have: ids of units hold no slash. */
const prefix = 'alert/';
export const alertName = (alert: string): string => `${prefix}${alert}`;
export const isAlertName = (name: string): boolean => name.startsWith(prefix);

/**
 * An alert that came or went: on record, but without a state of an alarm, so that it is never counted as one. The record goes with
 * it until it went, so that a restart finds it again.
 */
export function alertEntry({ what, alert, atMs }: AlertChange, wallMs: number): JournalEntry {
  return {
    ...nothing,
    recordedMs: Math.round(wallMs),
    happenedMs: Math.round(atMs),
    kind: 'system',
    cause: causes[what],
    alarm: storedText(alert.alert),
    unit: storedText(alert.unit),
    hall: storedText(alert.hall),
    entry: storedText(alert.entry),
    value: storedNumber(alert.value),
    limit: storedNumber(alert.limit),
    unitOfMeasure: storedText(alert.unitOfMeasure),
    place: storedText(alert.where),
    sinceMs: Math.round(alert.sinceMs),
    reason: what === 'came' ? 'alert came' : 'alert went',
    record: what === 'came' ? storedText(JSON.stringify(alert)) : null,
  };
}
