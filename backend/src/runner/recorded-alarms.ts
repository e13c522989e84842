import { isKept } from '../evaluation/alarm-lifecycle/alarm-record';
import { isSetAside } from '../evaluation/alarm-lifecycle/mode-facts';
import type { AlarmRecord, AlarmTransition } from '../evaluation/pipeline/outputs';
import type { AlarmJournal } from '../ports/alarm-journal';
import type { ShownAlarm } from './views/scene';

/**
 * The alarms that people are shown, those that are set aside apart: what the journal has committed. Where the journal refuses, changes
 * are kept in order and tried again; until then they are shown marked as not recorded.
 */
export class RecordedAlarms {
  private readonly committed = new Map<string, AlarmRecord>();
  private readonly pending: AlarmTransition[] = [];
  private shown: { readonly told: readonly ShownAlarm[]; readonly aside: readonly ShownAlarm[] } | null = null;
  private changes = 0;

  constructor(
    private readonly journal: AlarmJournal,
    /** The alarms that stand or are set aside by the judge now, recorded or not. */
    private readonly kept: () => readonly AlarmRecord[],
  ) {
    for (const record of journal.standing()) this.committed.set(record.alarm, record);
  }

  /** Commits the transitions, and whatever waited before them. False where the journal refused. */
  record(transitions: readonly AlarmTransition[], wallMs: number): boolean {
    this.pending.push(...transitions);
    if (this.pending.length === 0) return true;
    this.shown = null;
    this.changes += 1;
    const touched = new Set(this.pending.map(({ alarm }) => alarm));
    const records = this.kept().filter((record) => touched.has(record.alarm) || this.isRefolded(record));
    try {
      this.journal.append(this.pending, records, wallMs);
    } catch {
      // Kept and tried again; `waiting` says so in health, and each alarm concerned is shown as not recorded.
      return false;
    }
    for (const alarm of touched) this.committed.delete(alarm);
    for (const record of records) this.committed.set(record.alarm, record);
    this.pending.length = 0;
    return true;
  }

  /**
   * Commits what folds otherwise by now though no alarm changed, as after a first-out was set aside: what hides under it would stay
   * silent until something else of the site changes. What the journal refuses is looked at again with the next call.
   */
  follow(wallMs: number): void {
    if (this.pending.length > 0) return;
    const records = this.kept().filter((record) => this.isRefolded(record));
    if (records.length === 0) return;
    try {
      this.journal.append([], records, wallMs);
    } catch {
      // Health tells of a journal that refuses; until then the list stays as it was committed.
      return;
    }
    for (const record of records) this.committed.set(record.alarm, record);
    this.shown = null;
    this.changes += 1;
  }

  /**
   * An alarm folds under another, or comes out again, without a change of its own: its record follows with theirs. So do its times, where
   * the clock was set back over a restart: the next one reckons from them.
   */
  private isRefolded({ alarm, foldedUnder, modeUntilMs, stateSinceMs }: AlarmRecord): boolean {
    const known = this.committed.get(alarm);
    if (known === undefined) return false;
    const isTimed = known.modeUntilMs === modeUntilMs && known.stateSinceMs === stateSinceMs;
    return known.foldedUnder !== foldedUnder || !isTimed;
  }

  /**
   * Commits what a person is about to do, or says no: it is never kept for later, since whoever was told
   * that nothing happened must be able to rely on it. Not while changes of conditions wait, which came before.
   */
  recordAction(transition: AlarmTransition, record: AlarmRecord, wallMs: number): boolean {
    if (!this.record([], wallMs)) return false;
    const kept = isKept(record) ? [record] : [];
    try {
      this.journal.append([transition], kept, wallMs);
    } catch {
      // The answer to whoever acted says so; there is nothing else to tell.
      return false;
    }
    this.committed.delete(record.alarm);
    for (const one of kept) this.committed.set(one.alarm, one);
    this.shown = null;
    this.changes += 1;
    return true;
  }

  /** Changes that the journal has not taken yet. */
  waiting(): number {
    return this.pending.length;
  }

  /** Counts up whenever `list` may differ from before. */
  version(): number {
    return this.changes;
  }

  /** What people are told: standing, and not set aside. */
  list(): readonly ShownAlarm[] {
    return this.both().told;
  }

  /** What was set aside, standing or not. */
  setAside(): readonly ShownAlarm[] {
    return this.both().aside;
  }

  private both(): { readonly told: readonly ShownAlarm[]; readonly aside: readonly ShownAlarm[] } {
    if (this.shown === null) {
      const all = this.build();
      this.shown = {
        told: all.filter(({ record }) => !isSetAside(record)),
        aside: all.filter(({ record }) => isSetAside(record)),
      };
    }
    return this.shown;
  }

  private build(): ShownAlarm[] {
    const unrecorded = new Set(this.pending.map(({ alarm }) => alarm));
    const shown = new Map(
      [...this.committed].map(([alarm, record]) => [alarm, { record, recorded: !unrecorded.has(alarm) }]),
    );
    if (unrecorded.size === 0) return [...shown.values()];
    // As the judge has it; an alarm that has ended there stays as it was until its end is recorded.
    for (const record of this.kept())
      if (unrecorded.has(record.alarm)) shown.set(record.alarm, { record, recorded: false });
    return [...shown.values()];
  }
}
