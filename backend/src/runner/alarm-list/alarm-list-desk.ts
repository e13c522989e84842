import type {
  AlarmListing,
  ChangeSettingsRequest,
  DecideProposalRequest,
  ListedAlarm,
  SettingChange,
  SettingChanges,
  SettingsAudit,
} from '@ebbline/shared/contract/alarm-list';
import { fail, ok, type Result } from '@ebbline/shared/errors/result';
import { entryIds } from '../../evaluation/alarm-rules/entry-ids';
import { isEntryId } from '../../evaluation/alarm-rules/rationale/rationale-table';
import {
  checkChange,
  isThere,
  settingsAt,
  type CheckedChange,
} from '../../evaluation/alarm-rules/settings/check-change';
import { settingMembers } from '../../evaluation/alarm-rules/settings/to-settings';
import type { SettingRecord, SettingStep } from '../../evaluation/alarm-rules/settings/setting-record';
import { configuredByEntry, type ConfiguredCount } from '../../evaluation/pipeline/configured-alarms';
import type { CompiledSite } from '../../evaluation/site/compiled-site';
import type { AlarmListDesk, SettingActionFault } from '../../ports/alarm-list';
import type { AuthorisedListInForce } from '../../ports/authorised-list';
import type { Actor } from '../../ports/identity';
import { journalUnavailable } from '../journal-unavailable';
import { findingsOf, toSettingChange } from './audit';
import { changedMeanwhile } from './changed-meanwhile';
import { isFound } from './is-found';
import { listedSettings } from './listed-settings';
import { placesOf } from './places';
import { sameScope } from './same-scope';
import { held, isHighlyManaged, secondFault, SettingProposals } from './setting-proposals';
import type { SettingsInForce } from './settings-in-force';
import { toListedAlarm } from './to-listed-alarm';

export interface AlarmListParts {
  readonly settings: SettingsInForce;
  readonly authorised: AuthorisedListInForce;
  /** Changes that waited for a second person as the program started, oldest first. */
  readonly waiting: readonly SettingRecord[];
  /** Commits a change, a proposal or its withdrawal to the journal; false where it refuses: then it is not made. */
  readonly record: (change: SettingRecord, step: SettingStep) => boolean;
  /** Puts other limits in force between two slices. */
  readonly relimit: (site: CompiledSite) => void;
  readonly nowMs: () => number;
}

/** The rationalized list, what was authorised of it, and what runs; changes are committed first, and then in force. */
export class RunnerAlarmListDesk implements AlarmListDesk {
  private counted: { readonly site: CompiledSite; readonly of: ReadonlyMap<string, ConfiguredCount> } | null = null;

  private readonly proposals: SettingProposals;

  constructor(private readonly parts: AlarmListParts) {
    this.proposals = new SettingProposals(parts.waiting);
  }

  list({ search, differing }: Parameters<AlarmListDesk['list']>[0]): AlarmListing {
    const list = this.parts.authorised.list();
    const refused = this.parts.authorised.refused();
    const entries = this.entries();
    const alarms = entries.filter(({ priority }) => priority !== 'alert');
    const counts = this.configured();
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
      configured: {
        alarms: sum(counts, ({ alarms: count }) => count),
        priority1: sum(counts, ({ priority1 }) => priority1),
      },
      entries: entries.filter(
        (entry) =>
          isFound(entry, search) && (differing !== true || entry.settings.some(({ differs }) => differs.length > 0)),
      ),
    };
  }

  changes(): SettingChanges {
    const { settings } = this.parts;
    const faults = new Map(settings.refused().map(({ record, fault }) => [record, fault]));
    return {
      changes: settings
        .records()
        .map((record) => toSettingChange(record, faults.get(record)))
        .reverse(),
      proposed: this.proposals.all().map(held('awaitsSecond')),
    };
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
    return {
      time: this.time(),
      compared,
      findings: findingsOf(entries, settings.accepted(), settings.site()),
      refused: settings.refused().map(({ record, fault }) => toSettingChange(record, fault)),
    };
  }

  change(request: ChangeSettingsRequest, actor: Actor): Result<SettingChange, SettingActionFault> {
    const checked = this.check(request);
    if (!checked.ok) return checked;
    const { scope, set, reason, link } = request;
    const managed = isHighlyManaged(checked.value.entry);
    const fault = managed ? this.proposals.fault(request, actor) : null;
    if (fault !== null) return fail(fault);
    const atMs = this.parts.nowMs();
    const asked: SettingRecord = {
      id: managed ? this.proposals.nextId(atMs, this.parts.settings.records()) : this.nextId(),
      atMs,
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
    if (!managed) return this.make(asked);
    if (!this.parts.record(asked, 'settingProposed')) return fail(journalUnavailable);
    this.proposals.add(asked);
    return ok(held('awaitsSecond')(asked));
  }

  decide(
    id: string,
    decision: DecideProposalRequest['decision'],
    actor: Actor,
  ): Result<SettingChange, SettingActionFault> {
    const found = this.proposals.find(id);
    if (!found.ok) return found;
    const asked = found.value;
    if (decision === 'withdraw') {
      const { name: operator, station } = actor;
      const gone: SettingRecord = { ...asked, atMs: this.parts.nowMs(), operator, station };
      if (!this.parts.record(gone, 'settingWithdrawn')) return fail(journalUnavailable);
      this.proposals.remove(id);
      return ok(held('withdrawn')(asked));
    }
    const notBy = secondFault(asked, actor);
    if (notBy !== null) return fail(notBy);
    // What was proposed was meant against what ran then, and approved as it was shown.
    const checked = this.check({ ...asked, basedOn: asked.old });
    if (!checked.ok) return checked;
    const how = { atMs: this.parts.nowMs(), approvedBy: actor.name, proposal: id };
    const made = this.make({ ...asked, ...how, id: this.nextId() });
    if (made.ok) this.proposals.remove(id);
    return made;
  }

  private make(made: SettingRecord): Result<SettingChange, SettingActionFault> {
    if (!this.parts.record(made, 'settingChanged')) return fail(journalUnavailable);
    this.parts.relimit(this.parts.settings.add(made));
    return ok(toSettingChange(made));
  }

  private nextId(): string {
    return `setting-${this.parts.settings.records().length + 1}`;
  }

  private check(request: Omit<ChangeSettingsRequest, 'operator'>): Result<CheckedChange, SettingActionFault> {
    const { settings } = this.parts;
    const { basedOn, entry, scope, set } = request;
    const [site, changes] = [settings.site(), settings.changes()];
    const isPlace = isEntryId(entry) && isThere(site, scope);
    if (isPlace && basedOn !== undefined) {
      const running = settingsAt(site, changes, entry, scope);
      const meanwhile = changedMeanwhile(settings, entry, scope, basedOn, running);
      if (meanwhile !== null) return fail(meanwhile);
    }
    const checked = checkChange(site, changes, request);
    if (checked.ok || checked.fault.code !== 'SETTING_UNCHANGED' || !isPlace) return checked;
    // What runs may be set again in place of a change that is refused: then that one is settled.
    const settles = settings
      .refused()
      .some(({ record }) => record.entry === entry && sameScope(record.scope, scope) && sharesMember(record.set, set));
    const now = settingsAt(site, changes, entry, scope);
    return settles ? ok({ entry, old: now, new: now }) : checked;
  }

  private entries(): readonly ListedAlarm[] {
    const list = this.parts.authorised.list();
    const places = placesOf(this.parts.settings, list);
    const counts = this.configured();
    return entryIds.map((id) => toListedAlarm(id, listedSettings(id, places), list, counts.get(id)?.all));
  }

  /** Counted once for what runs: of thousands of units that takes a while. */
  private configured(): ReadonlyMap<string, ConfiguredCount> {
    const site = this.parts.settings.running();
    if (this.counted?.site !== site) this.counted = { site, of: configuredByEntry(site) };
    return this.counted.of;
  }

  private time(): string {
    return new Date(this.parts.nowMs()).toISOString();
  }
}

const sharesMember = (first: SettingRecord['set'], second: SettingRecord['set']): boolean =>
  settingMembers.some((member) => first[member] !== undefined && second[member] !== undefined);

const sum = (counts: ReadonlyMap<string, ConfiguredCount>, of: (count: ConfiguredCount) => number): number =>
  [...counts.values()].reduce((all, one) => all + of(one), 0);
