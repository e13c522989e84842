import type { AlarmRecord } from '../alarm-lifecycle/alarm-record';
import type { AlarmBook, BookOutcome, Commit } from '../alarm-lifecycle/alarm-book';
import type { OperatorAction } from './inputs';
import type { ActionOutcome } from './outputs';

type Refusal = Extract<BookOutcome, { ok: false }>['refusal'];

/** Carries out one operator action on the book of alarms, if `commit` takes it; else nothing has changed. */
export function act(book: AlarmBook, action: OperatorAction, nowMs: number, commit?: Commit): ActionOutcome {
  const outcome =
    action.kind === 'acknowledge'
      ? book.acknowledge(action.alarm, action, nowMs, commit)
      : book.reset(action.alarm, action, nowMs, commit);
  if (outcome.ok) return outcome;
  return {
    ok: false,
    code: outcome.refusal,
    message: messageOf(outcome.refusal, action.alarm, outcome.record),
    acknowledgedBy: outcome.record?.acknowledgedBy ?? null,
    acknowledgedAtMs: outcome.record?.acknowledgedAtMs ?? null,
  };
}

function messageOf(refusal: Refusal, alarm: string, record: AlarmRecord | null): string {
  switch (refusal) {
    case 'ACTION_NOT_RECORDED':
      return `what was done to alarm ${alarm} can not be recorded, so it was not done; try again`;
    case 'ALARM_UNKNOWN':
      return `no alarm ${alarm} stands; look at the list again, it may have gone back to normal`;
    case 'ALARM_ALREADY_ACKNOWLEDGED':
      return `alarm ${alarm} was acknowledged by ${record?.acknowledgedBy ?? 'someone'} already${latchedHint(record)}`;
    case 'ALARM_NOT_LATCHED':
      return `alarm ${alarm} does not latch; acknowledge it, it ends by itself`;
    case 'ALARM_STILL_ACTIVE':
      return record !== null && !record.active
        ? `alarm ${alarm} is not acknowledged yet; acknowledge it first, then reset it`
        : `alarm ${alarm} still has its cause; end that first, then reset it`;
  }
}

const latchedHint = (record: AlarmRecord | null): string =>
  record?.state === 'latchedAcknowledged' ? '; ten seconds after that a further acknowledgement resets it' : '';
