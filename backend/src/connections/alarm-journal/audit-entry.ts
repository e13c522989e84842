import { auditCauses, type AuditEntry } from '../../ports/audit';
import type { JournalEntry } from './journal-entry';
import { storedText } from './stored-text';
import { nothing } from './to-journal-entry';

/** Rows of people and access as a condition of a query; the names hold no quote. */
export const notOfAudit = `(cause IS NULL OR cause NOT IN (${auditCauses.map((cause) => `'${cause}'`).join(', ')}))`;

/** What was done with people and access: of no alarm and without a record, so the standing alarms stay as they are. */
export function auditEntry({ cause, actor, station, reason }: AuditEntry, wallMs: number): JournalEntry {
  return {
    ...nothing,
    recordedMs: Math.round(wallMs),
    happenedMs: Math.round(wallMs),
    kind: actor === null ? 'system' : 'action',
    cause,
    actor: storedText(actor),
    station: storedText(station),
    reason: storedText(reason),
  };
}
