import type {
  AlarmListing,
  ChangeSettingsRequest,
  SettingChange,
  SettingChanges,
  SettingsAudit,
} from '@ebbline/shared/contract/alarm-list';
import {
  alarmListingSchema,
  settingChangeSchema,
  settingChangesSchema,
  settingsAuditSchema,
} from '@ebbline/shared/contract/alarm-list';
import type { Result } from '@ebbline/shared/errors/result';
import { ok } from '@ebbline/shared/errors/result';
import { request } from './request';

/** The rationalised alarm list, whole: why each alarm exists, and how it is set. */
export const readAlarmListing = (): Promise<Result<AlarmListing>> => request('/api/alarm-list', alarmListingSchema);

/** Every change of a setting while the program ran, newest first. */
export async function readSettingChanges(): Promise<Result<SettingChanges['changes']>> {
  const reply = await request('/api/alarm-list/changes', settingChangesSchema);
  return reply.ok ? ok(reply.value.changes) : reply;
}

export const readSettingsAudit = (): Promise<Result<SettingsAudit>> =>
  request('/api/alarm-list/audit', settingsAuditSchema);

/** Resolves with the change as the journal holds it. */
export const changeSettings = (wish: ChangeSettingsRequest): Promise<Result<SettingChange>> =>
  request('/api/alarm-list/changes', settingChangeSchema, { body: wish });
