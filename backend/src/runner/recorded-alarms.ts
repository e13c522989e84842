import type { AlarmRecord, AlarmTransition } from '../evaluation/pipeline/outputs';
import type { AlarmJournal } from '../ports/alarm-journal';
import type { ShownAlarm } from './views/scene';

/**
 * The alarms that people are shown: what the journal has committed. Where the journal refuses, changes
 * are kept in order and tried again; until then they are shown marked as not recorded.
 */
export class RecordedAlarms {
  private readonly committed = new Map<string, AlarmRecord>();
  private readonly pending: AlarmTransition[] = [];
  private shown: readonly ShownAlarm[] | null = null;
  private changes = 0;

  constructor(
    private readonly journal: AlarmJournal,
    /** The alarms that stand by the judge now, recorded or not. */
    private readonly standing: () => readonly AlarmRecord[],
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
    const records = this.standing().filter(({ alarm }) => touched.has(alarm));
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

  /** Changes that the journal has not taken yet. */
  waiting(): number {
    return this.pending.length;
  }

  /** Counts up whenever `list` may differ from before. */
  version(): number {
    return this.changes;
  }

  list(): readonly ShownAlarm[] {
    this.shown ??= this.build();
    return this.shown;
  }

  private build(): ShownAlarm[] {
    const unrecorded = new Set(this.pending.map(({ alarm }) => alarm));
    const shown = new Map(
      [...this.committed].map(([alarm, record]) => [alarm, { record, recorded: !unrecorded.has(alarm) }]),
    );
    if (unrecorded.size === 0) return [...shown.values()];
    // As the judge has it; an alarm that has ended there stays as it was until its end is recorded.
    for (const record of this.standing())
      if (unrecorded.has(record.alarm)) shown.set(record.alarm, { record, recorded: false });
    return [...shown.values()];
  }
}
