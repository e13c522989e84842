import type {
  AlarmListing,
  ChangeSettingsRequest,
  ListedAlarm,
  SettingChange,
  SettingChanges,
  SettingsAudit,
} from '@ebbline/shared/contract/alarm-list';
import { fail, ok, type Result } from '@ebbline/shared/errors/result';
import { entryIds } from '../../evaluation/alarm-rules/entry-ids';
import type { SettingRecord } from '../../evaluation/alarm-rules/settings/setting-record';
import type { CompiledSite } from '../../evaluation/site/compiled-site';
import type { AlarmListDesk, SettingActionFault } from '../../ports/alarm-list';
import type { AuthorisedListInForce } from '../../ports/authorised-list';
import type { Actor } from '../../ports/identity';
import { journalUnavailable } from '../journal-unavailable';
import { findingsOf, toSettingChange } from './audit';
import { checkChange } from './check-change';
import { isFound } from './is-found';
import { listedSettings } from './listed-settings';
import { placesOf } from './places';
import type { SettingsInForce } from './settings-in-force';
import { toListedAlarm } from './to-listed-alarm';

export interface AlarmListParts {
  readonly settings: SettingsInForce;
  readonly authorised: AuthorisedListInForce;
  /** Commits a change to the journal; false where it refuses: then it is not made. */
  readonly record: (change: SettingRecord) => boolean;
  /** Puts other limits in force between two slices. */
  readonly relimit: (site: CompiledSite) => void;
  readonly nowMs: () => number;
}

/** The rationalized list, what was authorised of it, and what runs; changes are committed first, and then in force. */
export class RunnerAlarmListDesk implements AlarmListDesk {
  constructor(private readonly parts: AlarmListParts) {}

  list({ search, differing }: Parameters<AlarmListDesk['list']>[0]): AlarmListing {
    const list = this.parts.authorised.list();
    const refused = this.parts.authorised.refused();
    const entries = this.entries();
    const alarms = entries.filter(({ priority }) => priority !== 'alert');
    return {
      time: this.time(),
      authorisedBy: {
        file: list?.file ?? null,
        version: list?.version ?? null,
        approvedBy: list?.approvedBy ?? null,
        approvedOn: list?.approvedOn ?? null,
        ...(refused.length === 0 ? {} : { refused: [...refused] }),
      },
      shareOfPriority1: alarms.filter(({ priority }) => priority === 1).length / alarms.length,
      entries: entries.filter(
        (entry) =>
          isFound(entry, search) && (differing !== true || entry.settings.some(({ differs }) => differs.length > 0)),
      ),
    };
  }

  changes(): SettingChanges {
    return { changes: this.parts.settings.records().map(toSettingChange).reverse() };
  }

  audit(): SettingsAudit {
    const { settings } = this.parts;
    const entries = this.entries();
    const { halls, units } = settings.site();
    const compared = entries.reduce(
      (sum, { scopes = [] }) =>
        sum + 1 + (scopes.includes('hall') ? halls.length : 0) + (scopes.includes('unit') ? units.length : 0),
      0,
    );
    return { time: this.time(), compared, findings: findingsOf(entries, settings.records(), settings.site()) };
  }

  change(request: ChangeSettingsRequest, actor: Actor): Result<SettingChange, SettingActionFault> {
    const { settings, record, relimit, nowMs } = this.parts;
    const checked = checkChange(settings, request);
    if (!checked.ok) return checked;
    const { scope, set, reason, link } = request;
    const made: SettingRecord = {
      id: `setting-${settings.records().length + 1}`,
      atMs: nowMs(),
      entry: checked.value.entry,
      scope,
      set,
      old: checked.value.old,
      new: checked.value.new,
      reason,
      link,
      operator: actor.name,
      station: actor.station,
    };
    if (!record(made)) return fail(journalUnavailable);
    relimit(settings.add(made));
    return ok(toSettingChange(made));
  }

  private entries(): readonly ListedAlarm[] {
    const list = this.parts.authorised.list();
    const places = placesOf(this.parts.settings, list);
    return entryIds.map((id) => toListedAlarm(id, listedSettings(id, places), list));
  }

  private time(): string {
    return new Date(this.parts.nowMs()).toISOString();
  }
}
