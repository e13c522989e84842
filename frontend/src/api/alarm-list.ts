import type {
  AlarmListing,
  ChangeSettingsRequest,
  DecideProposalRequest,
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
import { request } from './request';

/** The rationalised alarm list, whole: why each alarm exists, and how it is set. */
export const readAlarmListing = (): Promise<Result<AlarmListing>> => request('/api/alarm-list', alarmListingSchema);

/** Every change of a setting while the program ran, newest first, and those that wait for a second person. */
export const readSettingChanges = (): Promise<Result<SettingChanges>> =>
  request('/api/alarm-list/changes', settingChangesSchema);

export const readSettingsAudit = (): Promise<Result<SettingsAudit>> =>
  request('/api/alarm-list/audit', settingsAuditSchema);

/** Resolves with the change as the journal holds it. */
export const changeSettings = (wish: ChangeSettingsRequest): Promise<Result<SettingChange>> =>
  request('/api/alarm-list/changes', settingChangeSchema, { body: wish });

export type DecideProposal = DecideProposalRequest & { readonly id: string };

/** Resolves with what came of it: the change as it is in force now, or as it was withdrawn. */
export const decideProposal = ({ id, ...body }: DecideProposal): Promise<Result<SettingChange>> =>
  request(`/api/alarm-list/proposals/${encodeURIComponent(id)}`, settingChangeSchema, { body });
