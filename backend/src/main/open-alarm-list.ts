import type { ValueProvider } from '@nestjs/common';
import type { CompiledSite } from '../evaluation/site/compiled-site';
import { ALARM_LIST } from '../ports/alarm-list';
import type { AlarmJournal } from '../ports/alarm-journal';
import type { AuthorisedListInForce } from '../ports/authorised-list';
import { RunnerAlarmListDesk, type AlarmListParts } from '../runner/alarm-list/alarm-list-desk';
import { SettingsInForce } from '../runner/alarm-list/settings-in-force';

export interface OpenedAlarmList {
  readonly settings: SettingsInForce;
  /** The desk, once there is what records and judges. */
  part(parts: Omit<AlarmListParts, 'settings' | 'authorised'>): ValueProvider;
}

/** The settings that run: the site file, with the changes that the journal holds. */
export function openAlarmList(
  site: CompiledSite,
  journal: AlarmJournal,
  authorised: AuthorisedListInForce,
): OpenedAlarmList {
  const settings = new SettingsInForce(site, journal.settings());
  return {
    settings,
    part: (parts) => ({ provide: ALARM_LIST, useValue: new RunnerAlarmListDesk({ settings, authorised, ...parts }) }),
  };
}
