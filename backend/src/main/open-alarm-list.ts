import type { ValueProvider } from '@nestjs/common';
import type { CompiledSite } from '../evaluation/site/compiled-site';
import { ALARM_LIST } from '../ports/alarm-list';
import type { AlarmJournal } from '../ports/alarm-journal';
import type { AuthorisedListInForce } from '../ports/authorised-list';
import type { Clock } from '../ports/clock';
import { RunnerAlarmListDesk, type AlarmListParts } from '../runner/alarm-list/alarm-list-desk';
import { RefusedChanges } from '../runner/alarm-list/refused-changes';
import { SettingsInForce } from '../runner/alarm-list/settings-in-force';
import { toldOfChanges } from '../runner/alarm-list/told-of-changes';

export interface OpenedAlarmList {
  readonly settings: SettingsInForce;
  /** Changes that a site file leaves behind, told to journal and health. */
  readonly refused: RefusedChanges;
  /** The desk, once there is what records and judges. */
  part(parts: Omit<AlarmListParts, 'settings' | 'authorised' | 'waiting'>): ValueProvider;
}

/** The settings that run: the site file, with the changes that the journal holds as far as they fit it. */
export function openAlarmList(
  site: CompiledSite,
  journal: AlarmJournal,
  authorised: AuthorisedListInForce,
  clock: Pick<Clock, 'wallMs'>,
): OpenedAlarmList {
  const settings = new SettingsInForce(site, journal.settings());
  const waiting = journal.settingsWaiting();
  const record = (cause: string, reason: string): boolean => {
    const wallMs = clock.wallMs();
    try {
      journal.appendSystem({ atMs: wallMs, reason, actor: null, cause }, wallMs);
      return true;
    } catch {
      // Told by health meanwhile, and tried again.
      return false;
    }
  };
  const refused = new RefusedChanges({
    settings,
    record,
    toldBefore: settings.records().length === 0 ? [] : toldOfChanges(journal),
  });
  refused.look();
  return {
    settings,
    refused,
    part: (parts) => ({
      provide: ALARM_LIST,
      useValue: new RunnerAlarmListDesk({ settings, authorised, waiting, ...parts }),
    }),
  };
}
