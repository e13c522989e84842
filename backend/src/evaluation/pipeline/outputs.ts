import type { AlarmRecord, AlarmTransition } from '../alarm-lifecycle/alarm-record';

export type { AlarmRecord, AlarmTransition } from '../alarm-lifecycle/alarm-record';

export type ActionOutcome =
  | { readonly ok: true; readonly transition: AlarmTransition; readonly record: AlarmRecord }
  | {
      readonly ok: false;
      readonly code:
        | 'ALARM_UNKNOWN'
        | 'ALARM_ALREADY_ACKNOWLEDGED'
        | 'ALARM_NOT_LATCHED'
        | 'ALARM_STILL_ACTIVE'
        | 'ACTION_NOT_RECORDED';
      readonly message: string;
      readonly acknowledgedBy: string | null;
      readonly acknowledgedAtMs: number | null;
    };
