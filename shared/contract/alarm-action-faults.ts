/** Why an action at an alarm has no effect. Stable. */
export const alarmActionFaults = [
  'ALARM_UNKNOWN',
  'ALARM_ALREADY_ACKNOWLEDGED',
  'ALARM_NOT_LATCHED',
  'ALARM_STILL_ACTIVE',
  'ALARM_SHELVED',
  'ALARM_SHELVED_ALREADY',
  'ALARM_NOT_SHELVED',
  'ALARM_SUPPRESSED_BY_DESIGN',
  'ALARM_OUT_OF_SERVICE',
  'ALARM_NOT_OUT_OF_SERVICE',
  'ALERT_NOT_SET_ASIDE',
  'SHELVING_TOO_LONG',
  'PLANNED_END_PAST',
] as const;
export type AlarmActionFault = (typeof alarmActionFaults)[number];
