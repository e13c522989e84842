import type { SettingRecord, SettingStep } from '../evaluation/alarm-rules/settings/setting-record';
import type { AlertChange } from '../evaluation/pipeline/alert-record';
import type { GuidedChange } from '../evaluation/pipeline/guided/guided-record';
import type { HandRecord } from '../evaluation/pipeline/hand-record';
import type { PermitChange } from '../evaluation/pipeline/permit-record';
import type { TightnessChange } from '../evaluation/pipeline/tightness-record';
import type { AlarmJournal } from '../ports/alarm-journal';

/** What the judge did by itself to permits, tests and alerts: kept in order and tried again where the journal refuses. */
export class RecordedChanges {
  private permits: PermitChange[] = [];
  private alerts: AlertChange[] = [];
  private tests: TightnessChange[] = [];
  private guided: GuidedChange[] = [];
  private changes = 0;

  constructor(private readonly journal: AlarmJournal) {}

  /** Commits these, and whatever waited before them. */
  record(
    permits: readonly PermitChange[],
    alerts: readonly AlertChange[],
    wallMs: number,
    tests: readonly TightnessChange[] = [],
    guided: readonly GuidedChange[] = [],
  ): void {
    if (permits.length + alerts.length + tests.length + guided.length > 0) this.changes += 1;
    this.permits.push(...permits);
    this.alerts.push(...alerts);
    this.tests.push(...tests);
    this.guided.push(...guided);
    if (this.waiting() === 0) return;
    try {
      if (this.permits.length > 0) this.journal.appendPermits(this.permits, wallMs);
      this.permits = [];
      if (this.tests.length > 0) this.journal.appendTightness(this.tests, wallMs);
      this.tests = [];
      if (this.guided.length > 0) this.journal.appendGuided(this.guided, wallMs);
      this.guided = [];
      if (this.alerts.length > 0) this.journal.appendAlerts(this.alerts, wallMs);
      this.alerts = [];
    } catch {
      // Kept and tried again; `waiting` says so in health.
    }
  }

  /** Commits what a person is about to do, or says no: then it is not done. Not while earlier changes wait. */
  recordAction(change: PermitChange, wallMs: number): boolean {
    return this.commit(wallMs, () => this.journal.appendPermits([change], wallMs));
  }

  /** The same for a pressure-rise test. */
  recordTightness(change: TightnessChange, wallMs: number): boolean {
    return this.commit(wallMs, () => this.journal.appendTightness([change], wallMs));
  }

  /** The same for a guided test. */
  recordGuided(change: GuidedChange, wallMs: number): boolean {
    return this.commit(wallMs, () => this.journal.appendGuided([change], wallMs));
  }

  /** The same for a value that a person typed. */
  recordHand(record: HandRecord, wallMs: number): boolean {
    return this.commit(wallMs, () => this.journal.appendHand(record, wallMs));
  }

  /** The same for a setting that a person changed, proposed or withdrew. */
  recordSetting(record: SettingRecord, step: SettingStep, wallMs: number): boolean {
    return this.commit(wallMs, () => this.journal.appendSetting(record, wallMs, step));
  }

  private commit(wallMs: number, append: () => unknown): boolean {
    this.record([], [], wallMs);
    if (this.waiting() > 0) return false;
    try {
      append();
    } catch {
      // The answer to whoever acted says so; there is nothing else to tell.
      return false;
    }
    this.changes += 1;
    return true;
  }

  /** Changes that the journal has not taken yet. */
  waiting(): number {
    return this.permits.length + this.alerts.length + this.tests.length + this.guided.length;
  }

  /** Counts up with every change of a permit, a test or an alert. */
  version(): number {
    return this.changes;
  }
}
