import type { AcknowledgeRequest, Alarm, JournalRow } from '@ebbline/shared/contract/alarm';
import { alarmSchema, journalPageSchema } from '@ebbline/shared/contract/alarm';
import type { AcknowledgeManyReply, AcknowledgeManyRequest } from '@ebbline/shared/contract/alarm-modes';
import { acknowledgeManyReplySchema } from '@ebbline/shared/contract/alarm-modes';
import type { JournalFilter } from '@ebbline/shared/contract/journal-search';
import type { Result } from '@ebbline/shared/errors/result';
import { request } from './request';

/** Resolves with the alarm as the journal holds it now; refused with who and when where someone was first. */
export function acknowledge(alarm: string, wish: AcknowledgeRequest): Promise<Result<Alarm>> {
  return request(`/api/alarms/${encodeURIComponent(alarm)}/acknowledge`, alarmSchema, { body: wish });
}

/** Several at once under one comment; each has an answer of its own. */
export const acknowledgeMany = (wish: AcknowledgeManyRequest): Promise<Result<AcknowledgeManyReply>> =>
  request('/api/alarms/acknowledge', acknowledgeManyReplySchema, { body: wish });

export interface JournalPage {
  readonly rows: readonly JournalRow[];
  readonly next: number | null;
}

const queryOf = (filter: JournalFilter): Record<string, string> =>
  Object.fromEntries(
    Object.entries(filter).flatMap(([key, value]) => (value === undefined ? [] : [[key, String(value)]])),
  );

/** One page, newest first. @param before `next` of the page before; null: the first */
export function readJournal(filter: JournalFilter, before: number | null, limit: number): Promise<Result<JournalPage>> {
  const query = { ...queryOf(filter), order: 'newest', limit: String(limit) };
  const paged = before === null ? query : { ...query, before: String(before) };
  return request(`/api/alarms/journal?${new URLSearchParams(paged).toString()}`, journalPageSchema);
}

/** Where the browser fetches the same rows as a file. */
export const journalExportPath = (filter: JournalFilter, format: 'csv' | 'json'): string =>
  `/api/alarms/journal/export?${new URLSearchParams({ ...queryOf(filter), format }).toString()}`;
