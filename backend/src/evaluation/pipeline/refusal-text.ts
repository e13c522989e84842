import type { AlarmRecord } from '../alarm-lifecycle/alarm-record';
import type { RefusalOfOperatorAction } from './outputs';

/** What is said to whoever acted without effect: why, and what to do. */
export function refusalText(
  refusal: RefusalOfOperatorAction,
  alarm: string,
  record: AlarmRecord | null,
  nowMs: number,
): string {
  switch (refusal) {
    case 'ACTION_NOT_RECORDED':
      return `what was done to alarm ${alarm} can not be recorded, so it was not done; try again`;
    case 'ALARM_UNKNOWN':
      return `no alarm ${alarm} stands, or the site has none of that name; look at the list again, it may have gone back to normal`;
    case 'ALERT_NOT_SET_ASIDE':
      return `${alarm} is told as an alert, which makes no sound and waits for nobody, so there is nothing to set aside; mend its cause, or have its setting changed in the list of limits`;
    case 'ALARM_ALREADY_ACKNOWLEDGED':
      return `alarm ${alarm} was acknowledged by ${record?.acknowledgedBy ?? 'someone'} already${latchedHint(record)}`;
    case 'ALARM_NOT_LATCHED':
      return `alarm ${alarm} does not latch; acknowledge it, it ends by itself`;
    case 'ALARM_STILL_ACTIVE':
      return record !== null && !record.active
        ? `alarm ${alarm} is not acknowledged yet; acknowledge it first, then reset it`
        : `alarm ${alarm} still has its cause; end that first, then reset it`;
    case 'ALARM_SHELVED':
      return `alarm ${alarm} is shelved by ${byWhom(record)}${timeLeft(record, nowMs)}; unshelve it first`;
    case 'ALARM_SHELVED_ALREADY':
      return `alarm ${alarm} was shelved by ${byWhom(record)} already${timeLeft(record, nowMs)}; unshelve it to shelve it anew`;
    case 'ALARM_NOT_SHELVED':
      return `alarm ${alarm} is not shelved; look at the list again, its time may be over`;
    case 'ALARM_SUPPRESSED_BY_DESIGN':
      return `alarm ${alarm} is suppressed by design, as the mode of its unit has it off; nothing waits to be acknowledged`;
    case 'ALARM_OUT_OF_SERVICE':
      return `alarm ${alarm} was taken out of service by ${byWhom(record)}; return it to service first`;
    case 'ALARM_NOT_OUT_OF_SERVICE':
      return `alarm ${alarm} is not out of service; look at the list again`;
    case 'SHELVING_TOO_LONG':
      return `alarm ${alarm} may not be shelved for so long at once: at most an hour where it can have priority 1, else eight hours; ask for less, or have it taken out of service`;
    case 'PLANNED_END_PAST':
      return `the planned end for alarm ${alarm} is in the past; give a later one, or none`;
  }
}

const byWhom = (record: AlarmRecord | null): string => record?.modeBy ?? 'someone';

function timeLeft(record: AlarmRecord | null, nowMs: number): string {
  const untilMs = record?.modeUntilMs ?? null;
  return untilMs === null ? '' : ` for ${Math.max(1, Math.ceil((untilMs - nowMs) / 60_000))} min more`;
}

const latchedHint = (record: AlarmRecord | null): string =>
  record?.state === 'latchedAcknowledged' ? '; ten seconds after that a further acknowledgement resets it' : '';
