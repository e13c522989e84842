import type { BookOutcome } from '../alarm-lifecycle/alarm-book';
import type { AlarmRecord, AlarmTransition } from '../alarm-lifecycle/alarm-record';

export type { AlarmRecord, AlarmTransition } from '../alarm-lifecycle/alarm-record';

/** Why an action of a person had no effect. */
export type RefusalOfOperatorAction =
  | Extract<BookOutcome, { ok: false }>['refusal']
  /** Told as an alert only: it is in no list of alarms from which it could be taken. */
  | 'ALERT_NOT_SET_ASIDE'
  /** Longer than this alarm may be shelved at once. */
  | 'SHELVING_TOO_LONG'
  /** The planned end lies in the past. */
  | 'PLANNED_END_PAST';

export type ActionOutcome =
  | { readonly ok: true; readonly transition: AlarmTransition; readonly record: AlarmRecord }
  | {
      readonly ok: false;
      readonly code: RefusalOfOperatorAction;
      readonly message: string;
      readonly acknowledgedBy: string | null;
      readonly acknowledgedAtMs: number | null;
    };
