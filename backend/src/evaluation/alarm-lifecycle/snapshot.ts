import { alarmStates, type AlarmState } from '@ebbline/shared/contract/alarm';
import { fail, ok, type Failure, type Result } from '@ebbline/shared/errors/result';
import type { AlarmRecord } from './alarm-record';
import { stateFacts } from './states';

/** Standing alarms as text, for a journal or a file. */
export const toSnapshot = (records: readonly AlarmRecord[]): string => JSON.stringify(records);

/** The way back; refuses what is not a list of records, so that a spoilt file is never half restored. */
export function fromSnapshot(text: string): Result<readonly AlarmRecord[], Failure<'SNAPSHOT_MALFORMED'>> {
  let parsed: unknown;
  try {
    parsed = JSON.parse(text);
  } catch {
    return malformed('it is not JSON');
  }
  if (!Array.isArray(parsed)) return malformed('it is not a list');
  const wrong = parsed.findIndex((entry) => !isRecord(entry));
  return wrong < 0 ? ok(parsed as readonly AlarmRecord[]) : malformed(`entry ${wrong} is not an alarm record`);
}

const malformed = (why: string): Result<never, Failure<'SNAPSHOT_MALFORMED'>> =>
  fail({
    code: 'SNAPSHOT_MALFORMED',
    message: `snapshot of standing alarms: ${why}; restore the journal from a copy, or start without it`,
  });

function isRecord(entry: unknown): entry is AlarmRecord {
  if (typeof entry !== 'object' || entry === null) return false;
  const record = entry as Record<string, unknown>;
  return (
    typeof record.alarm === 'string' &&
    typeof record.entry === 'string' &&
    typeof record.sinceMs === 'number' &&
    typeof record.stateSinceMs === 'number' &&
    (record.priority === 1 || record.priority === 2 || record.priority === 3) &&
    alarmStates.includes(record.state as AlarmState) &&
    record.active === stateFacts[record.state as AlarmState].active
  );
}
