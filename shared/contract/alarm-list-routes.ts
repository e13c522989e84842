import {
  alarmListingQuerySchema,
  alarmListingSchema,
  changeSettingsFaults,
  changeSettingsRequestSchema,
  decideProposalFaults,
  decideProposalRequestSchema,
  settingChangeSchema,
  settingChangesSchema,
  settingsAuditSchema,
} from './alarm-list';
import type { RouteRow } from './route-row';

/** The rationalized list of alarms: read, compared with what was authorised, and changed. */
export const alarmListRoutes = [
  {
    method: 'get',
    path: '/api/alarm-list',
    right: 'look',
    reply: alarmListingSchema,
    query: alarmListingQuerySchema,
    body: null,
    faults: [],
  },
  {
    method: 'get',
    path: '/api/alarm-list/changes',
    right: 'look',
    reply: settingChangesSchema,
    query: null,
    body: null,
    faults: [],
  },
  {
    method: 'get',
    path: '/api/alarm-list/audit',
    right: 'look',
    reply: settingsAuditSchema,
    query: null,
    body: null,
    faults: [],
  },
  {
    method: 'post',
    path: '/api/alarm-list/changes',
    right: 'changeLimits',
    reply: settingChangeSchema,
    query: null,
    body: changeSettingsRequestSchema,
    faults: ['ACTOR_DIFFERS', ...changeSettingsFaults, 'JOURNAL_UNAVAILABLE'],
  },
  {
    method: 'post',
    path: '/api/alarm-list/proposals/{id}',
    right: 'changeLimits',
    reply: settingChangeSchema,
    query: null,
    body: decideProposalRequestSchema,
    faults: ['ACTOR_DIFFERS', ...decideProposalFaults, 'JOURNAL_UNAVAILABLE'],
  },
] as const satisfies readonly RouteRow[];
