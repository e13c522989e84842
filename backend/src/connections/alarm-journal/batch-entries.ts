import { CodedError } from '@ebbline/shared/errors/coded-error';
import type { AlarmRecord } from '../../evaluation/pipeline/outputs';
import type { ToldTransition } from '../../ports/alarm-journal';
import type { JournalEntry } from './journal-entry';
import { recordEntry, transitionEntry } from './to-journal-entry';

/**
 * The entries of one batch in order. The record of an alarm goes with its last transition, so that the
 * standing alarms can be added up from the rows alone; a record without a transition gets a row of its own.
 * @throws CodedError JOURNAL_RECORD_MISSING where an alarm ends the batch standing and no record says how
 */
export function batchEntries(
  transitions: readonly ToldTransition[],
  records: readonly AlarmRecord[],
  wallMs: number,
): JournalEntry[] {
  const recordOf = new Map(records.map((record) => [record.alarm, record]));
  const lastOf = new Map(transitions.map((transition, index) => [transition.alarm, index]));
  const entries = transitions.map((transition, index) => {
    if (lastOf.get(transition.alarm) !== index) return transitionEntry(transition, null, wallMs);
    const record = recordOf.get(transition.alarm) ?? null;
    if (record === null && transition.to !== 'normal') {
      throw new CodedError(
        'JOURNAL_RECORD_MISSING',
        `alarm ${transition.alarm} becomes ${transition.to} but no record was handed over; pass the record with the transition`,
      );
    }
    return transitionEntry(transition, record, wallMs);
  });
  for (const record of recordOf.values()) if (!lastOf.has(record.alarm)) entries.push(recordEntry(record, wallMs));
  return entries;
}
