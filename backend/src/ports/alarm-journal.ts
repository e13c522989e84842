import type { JournalRow } from '@ebbline/shared/contract/alarm';
import type { SettingRecord, SettingStep } from '../evaluation/alarm-rules/settings/setting-record';
import type { JournalStep } from '../evaluation/alarm-performance/journal-step';
import type { AlertChange, AlertRecord } from '../evaluation/pipeline/alert-record';
import type { GuidedChange, GuidedRecord } from '../evaluation/pipeline/guided/guided-record';
import type { HandRecord } from '../evaluation/pipeline/hand-record';
import type { PermitChange, PermitRecord } from '../evaluation/pipeline/permit-record';
import type { TightnessChange, TightnessRecord } from '../evaluation/pipeline/tightness-record';
import type { AlarmRecord, AlarmTransition } from '../evaluation/pipeline/outputs';
import type { TransitionFacts } from '../evaluation/pipeline/transition-facts';
import type { AuditEntry } from './audit';
import type { JournalPage, JournalQuery } from './journal-query';
import type { NoteEntry } from './note-entry';
import type { ProgramEntry } from './program-entry';

export interface SystemEntry {
  readonly atMs: number;
  readonly reason: string;
  readonly actor: string | null;
  /** Stable word for what happened; null or left out: the reason says it. */
  readonly cause?: string | null;
}

/** A change of an alarm, with what else is known of it where that was looked at. */
export type ToldTransition = AlarmTransition & Partial<TransitionFacts>;

export interface StepsQuery {
  /** Rows behind this sequence; 0: from the first. */
  readonly after: number;
  /** Rows that happened in [fromMs, toMs); null does not narrow. */
  readonly fromMs: number | null;
  readonly toMs: number | null;
}

export interface StepsPage {
  readonly steps: readonly JournalStep[];
  /** Pass as `after` for the next page, which may hold few rows or none; null at the end. */
  readonly next: number | null;
}

/** Which rows may be sealed. */
export interface SealDue {
  /** Rows recorded before may go. */
  readonly beforeMs: number;
  /** Fewer than a whole file only where one of them was recorded before this. */
  readonly urgentMs: number;
  /** Time of sealing. */
  readonly wallMs: number;
}

/** What stood at a past time, as the rows up to then add up. */
export interface StandingThen {
  /** The last row that counts. */
  readonly sequence: number;
  readonly alarms: readonly AlarmRecord[];
  readonly alerts: readonly AlertRecord[];
  /** Open and overdue ones. */
  readonly permits: readonly PermitRecord[];
}

/** Append-only record of every alarm change and action, hash-chained; and the standing alarms it adds up to. */
export interface AlarmJournal {
  /** Commits all (synchronous FULL) before it returns. Throws if the disk refuses. `wallMs` = time of record. */
  append(
    transitions: readonly ToldTransition[],
    records: readonly AlarmRecord[],
    wallMs: number,
  ): readonly JournalRow[];
  appendSystem(entry: SystemEntry, wallMs: number): JournalRow;
  /** A permit opened, gone overdue, or closed, by a person or by the program. */
  appendPermits(changes: readonly PermitChange[], wallMs: number): readonly JournalRow[];
  /** Guided pressure-rise tests that started or ended, each with its whole record. */
  appendTightness(changes: readonly TightnessChange[], wallMs: number): readonly JournalRow[];
  /** Every test as last committed, in the order in which they last changed. */
  tightness(): readonly TightnessRecord[];
  /** Steps of other guided tests, each with its whole record. */
  appendGuided(changes: readonly GuidedChange[], wallMs: number): readonly JournalRow[];
  /** Every guided test as last committed, in the order in which they last changed. */
  guided(): readonly GuidedRecord[];
  /** Alerts that came or went. */
  appendAlerts(changes: readonly AlertChange[], wallMs: number): readonly JournalRow[];
  /** Alerts that came and have not gone, as committed. */
  alerts(): readonly AlertRecord[];
  /** Permits that are not closed, as committed. */
  permits(): readonly PermitRecord[];
  /** A value that a person typed, or a correction of one. */
  appendHand(record: HandRecord, wallMs: number): readonly JournalRow[];
  /** Values typed from a time on, in the order in which they were committed. */
  hand(fromMs: number): readonly HandRecord[];
  /** A setting of an alarm that a person changed, proposed or withdrew. */
  appendSetting(record: SettingRecord, wallMs: number, step?: SettingStep): readonly JournalRow[];
  /** Every change of a setting, in the order in which they were committed. */
  settings(): readonly SettingRecord[];
  /** Changes of settings that were proposed and neither approved nor withdrawn, oldest first. */
  settingsWaiting(): readonly SettingRecord[];
  /** What was done with people and access. */
  appendAudit(entries: readonly AuditEntry[], wallMs: number): readonly JournalRow[];
  /** What a person wrote down of the plant, or a shift handed over or taken over. */
  appendNotes(entries: readonly NoteEntry[], wallMs: number): readonly JournalRow[];
  /** Rows of notes and handovers that speak of [fromMs, toMs), and every row that follows one of any time; in order of sequence. */
  notes(fromMs: number, toMs: number): readonly JournalRow[];
  /** The program began to watch, or ended in order. */
  appendProgram(entry: ProgramEntry, wallMs: number): readonly JournalRow[];
  /** The newest row of that; null where none can be searched. */
  lastOfProgram(): JournalRow | null;
  /** Standing alarms as committed. */
  standing(): readonly AlarmRecord[];
  /**
   * Alarms, alerts and permits as they stood at a time, by when their rows happened. Null where rows of that time were sealed into
   * files.
   */
  standingAt(atMs: number): StandingThen | null;
  /** A page of rows. It ends early where so many rows were looked at that others would have to wait; `next` goes on there. */
  page(query: JournalQuery): JournalPage;
  /** What figures are reckoned from, in order of sequence: a bounded piece of the journal each time. */
  steps(query: StepsQuery): StepsPage;
  /** The newest row's place in the chain. */
  head(): { readonly sequence: number; readonly hash: string };
  /** Recomputes the chain; the first broken sequence, or null where it is whole. */
  verify(): { readonly rows: number; readonly brokenAt: number | null };
  /**
   * Moves the oldest rows that are due into one sealed file. Gives back how many; 0 where it is not worth a file yet.
   * @throws CodedError JOURNAL_SEAL_FAILED; the rows then stand where they stood
   */
  sealOldest(due: SealDue): Promise<number>;
  close(): void;
}

export const ALARM_JOURNAL = Symbol('AlarmJournal');
