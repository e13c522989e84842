import type { AlertChange } from '../../evaluation/pipeline/alert-record';
import type { JournalEntry } from './journal-entry';
import { storedNumber, storedText } from './stored-text';
import { nothing } from './to-journal-entry';

/** An alert that came or went: on record, but without a state of an alarm, so that it is never counted as one. */
export function alertEntry({ what, alert, atMs }: AlertChange, wallMs: number): JournalEntry {
  return {
    ...nothing,
    recordedMs: Math.round(wallMs),
    happenedMs: Math.round(atMs),
    kind: 'system',
    cause: what === 'came' ? 'alertCame' : 'alertWent',
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
  };
}
