import type {
  AlarmListing,
  ChangeSettingsFault,
  ChangeSettingsRequest,
  DecideProposalRequest,
  SettingChange,
  SettingChanges,
  SettingsAudit,
} from '@ebbline/shared/contract/alarm-list';
import type { Result } from '@ebbline/shared/errors/result';
import type { Actor } from './identity';

/** Why a setting was not changed. */
export interface SettingActionFault {
  readonly code: ChangeSettingsFault | 'JOURNAL_UNAVAILABLE';
  readonly message: string;
  /** What else is told with it: of what was changed meanwhile, the settings that run and the change that made them so. */
  readonly members?: Readonly<Record<string, unknown>>;
}

/** The rationalized list of alarms, what was authorised of it, and what runs. */
export interface AlarmListDesk {
  list(query: { readonly search?: string | undefined; readonly differing?: boolean | undefined }): AlarmListing;
  /** Changes while the program ran, newest first. */
  changes(): SettingChanges;
  /** Where what runs is not what was authorised. */
  audit(): SettingsAudit;
  /** Recorded first, then in force with the next slice; of a highly managed class only held, for a second person. */
  change(request: ChangeSettingsRequest, actor: Actor): Result<SettingChange, SettingActionFault>;
  /** What a second person says to a change that is held. */
  decide(
    id: string,
    decision: DecideProposalRequest['decision'],
    actor: Actor,
  ): Result<SettingChange, SettingActionFault>;
}

export const ALARM_LIST = Symbol('AlarmList');
