import type { alarmListRoutes } from '@ebbline/shared/contract/alarm-list-routes';

type Row = (typeof alarmListRoutes)[number];
type Key = Row extends infer R ? (R extends Row ? `${R['method']} ${R['path']}` : never) : never;

/** What each route of the list of alarms is for, in one line. */
export const alarmListRouteTexts: Readonly<Record<Key, { readonly operationId: string; readonly summary: string }>> = {
  'get /api/alarm-list': {
    operationId: 'alarmList',
    summary: 'Every alarm with its rationale, and how it is set: as authorised, and as it runs.',
  },
  'get /api/alarm-list/changes': {
    operationId: 'settingChanges',
    summary: 'Settings that people changed while the program ran, newest first.',
  },
  'get /api/alarm-list/audit': {
    operationId: 'settingsAudit',
    summary: 'Where what runs is not what was authorised: who, when, old, new and why.',
  },
  'post /api/alarm-list/changes': {
    operationId: 'changeSetting',
    summary:
      'Changes limit, deadband, delay or whether an alarm is judged; committed first, then in force at once. Of a highly managed class it is held until a second person approves.',
  },
  'post /api/alarm-list/proposals/{id}': {
    operationId: 'decideSettingProposal',
    summary: 'Approves a change that waits for a second person, which puts it in force, or withdraws it.',
  },
};
