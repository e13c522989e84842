import type { JournalRow } from '@ebbline/shared/contract/alarm';
import type { AlertChange, AlertRecord } from '../evaluation/pipeline/alert-record';
import type { HandRecord } from '../evaluation/pipeline/hand-record';
import type { PermitChange, PermitRecord } from '../evaluation/pipeline/permit-record';
import type { TightnessChange, TightnessRecord } from '../evaluation/pipeline/tightness-record';
import type { AlarmRecord, AlarmTransition } from '../evaluation/pipeline/outputs';
import type { AuditEntry } from './audit';

export interface SystemEntry {
  readonly atMs: number;
  readonly reason: string;
  readonly actor: string | null;
}

/** Append-only record of every alarm change and action, hash-chained; and the standing alarms it adds up to. */
export interface AlarmJournal {
  /** Commits all (synchronous FULL) before it returns. Throws if the disk refuses. `wallMs` = time of record. */
  append(
    transitions: readonly AlarmTransition[],
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
  /** What was done with people and access. */
  appendAudit(entries: readonly AuditEntry[], wallMs: number): readonly JournalRow[];
  /** Standing alarms as committed. */
  standing(): readonly AlarmRecord[];
  /** Rows that happened in [fromMs, toMs), in order of sequence; `after` excludes; at most 500 rows a page. `audit: false` leaves out those of people and access. */
  page(query: {
    readonly fromMs: number | null;
    readonly toMs: number | null;
    readonly after: number | null;
    readonly audit?: boolean;
  }): {
    readonly rows: readonly JournalRow[];
    readonly next: number | null;
  };
  /** Recomputes the chain; the first broken sequence, or null where it is whole. */
  verify(): { readonly rows: number; readonly brokenAt: number | null };
  close(): void;
}

export const ALARM_JOURNAL = Symbol('AlarmJournal');
