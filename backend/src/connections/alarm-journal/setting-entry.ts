import type { JournalFacts } from '@ebbline/shared/contract/journal-facts';
import { isEntryId, unitOfSetting } from '../../evaluation/alarm-rules/rationale/rationale-table';
import type { SettingRecord, SettingStep } from '../../evaluation/alarm-rules/settings/setting-record';
import type { JournalEntry } from './journal-entry';
import { storedText } from './stored-text';
import { nothing } from './to-journal-entry';

/** Cause of the rows of changed settings; `needed-rows` keeps them, and the index of the journal names it. */
export const settingCause = 'settingChanged';

/** A setting of an entry that a person changed, proposed or withdrew. It is of no alarm; the record is how a restart finds it again. */
export function settingEntry(record: SettingRecord, wallMs: number, step: SettingStep = settingCause): JournalEntry {
  const { approvedBy, atMs, entry, link, new: now, old, operator, reason, scope, station } = record;
  const second = approvedBy === undefined ? {} : { approvedBy };
  const facts: JournalFacts = { setting: { scope, old, new: now, link, ...second } };
  return {
    ...nothing,
    recordedMs: Math.round(wallMs),
    happenedMs: Math.round(atMs),
    kind: 'action',
    cause: step,
    unit: scope.kind === 'unit' ? storedText(scope.id) : null,
    hall: scope.kind === 'hall' ? storedText(scope.id) : null,
    entry: storedText(entry),
    // Of limit, low end and deadband in the facts; the delays there name their own.
    unitOfMeasure: isEntryId(entry) ? unitOfSetting(entry) : null,
    actor: storedText(operator),
    station: storedText(station),
    reason: storedText(reason),
    record: storedText(JSON.stringify(record)),
    facts: storedText(JSON.stringify(facts)),
  };
}
