import type {
  AlarmListing,
  ChangeSettingsRequest,
  SettingChange,
  SettingChanges,
  SettingsAudit,
} from '@ebbline/shared/contract/alarm-list';
import type { DecideProposal } from '../api/alarm-list';
import {
  changeSettings,
  decideProposal,
  readAlarmListing,
  readSettingChanges,
  readSettingsAudit,
} from '../api/alarm-list';
import type { OneAct } from './use-acting';
import { useActing } from './use-acting';
import type { Polled } from './use-polled';
import { usePolled } from './use-polled';

/** Others may change a setting meanwhile. ms */
export const listingEveryMs = 15_000;

export const useAlarmListing = (): Polled<AlarmListing> => usePolled(readAlarmListing, { everyMs: listingEveryMs });

export const useSettingChanges = (): Polled<SettingChanges> =>
  usePolled(readSettingChanges, { everyMs: listingEveryMs });

export const useSettingsAudit = (): Polled<SettingsAudit> => usePolled(readSettingsAudit, { everyMs: listingEveryMs });

export const useChangeSettings = (): OneAct<ChangeSettingsRequest, SettingChange> => useActing(changeSettings);

export const useDecideProposal = (): OneAct<DecideProposal, SettingChange> => useActing(decideProposal);
