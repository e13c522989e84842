import type { AcknowledgeRequest, Alarm, JournalRow } from '@ebbline/shared/contract/alarm';
import { alarmSchema, journalPageSchema } from '@ebbline/shared/contract/alarm';
import type { Result } from '@ebbline/shared/errors/result';
import { request } from './request';

/** Resolves with the alarm as the journal holds it now; refused with who and when where someone was first. */
export function acknowledge(alarm: string, wish: AcknowledgeRequest): Promise<Result<Alarm>> {
  return request(`/api/alarms/${encodeURIComponent(alarm)}/acknowledge`, alarmSchema, { body: wish });
}

export interface JournalPage {
  readonly rows: readonly JournalRow[];
  readonly next: number | null;
}

/** One page in order of sequence. @param from ISO 8601 @param after sequence of the last row already held */
export function readJournal(from: string | null, after: number | null): Promise<Result<JournalPage>> {
  const query = new URLSearchParams();
  if (from !== null) query.set('from', from);
  if (after !== null) query.set('after', String(after));
  const text = query.toString();
  return request(`/api/alarms/journal${text === '' ? '' : `?${text}`}`, journalPageSchema);
}
