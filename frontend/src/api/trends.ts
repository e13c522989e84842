import type { NoteList } from '@ebbline/shared/contract/notes';
import { noteListSchema } from '@ebbline/shared/contract/notes';
import type { AlarmSpans, PastUncertainty } from '@ebbline/shared/contract/trends';
import { alarmSpansSchema, pastUncertaintySchema } from '@ebbline/shared/contract/trends';
import type { Result } from '@ebbline/shared/errors/result';
import { request } from './request';

/** It is worked out beside the judging, which goes first. ms */
const workMs = 30_000;

/** ISO 8601, UTC; the period is half-open. */
export interface SpanOfTime {
  readonly from: string;
  readonly to: string;
}

export const readAlarmSpans = (units: readonly string[], { from, to }: SpanOfTime): Promise<Result<AlarmSpans>> =>
  request(
    `/api/alarms/spans?${new URLSearchParams({ units: units.join(','), from, to }).toString()}`,
    alarmSpansSchema,
  );

export const readUncertainty = (
  unit: string,
  points: readonly string[],
  { from, to }: SpanOfTime,
): Promise<Result<PastUncertainty>> =>
  request(
    `/api/history/uncertainty?${new URLSearchParams({ unit, points: points.join(','), from, to }).toString()}`,
    pastUncertaintySchema,
    { timeOutMs: workMs },
  );

/** What people wrote of a unit, of its hall, and of the whole site. */
export const readNotesOver = (unit: string, { from, to }: SpanOfTime): Promise<Result<NoteList>> =>
  request(`/api/notes?${new URLSearchParams({ unit, from, to }).toString()}`, noteListSchema);
