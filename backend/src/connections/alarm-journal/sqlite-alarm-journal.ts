import type { JournalRow } from '@ebbline/shared/contract/alarm';
import { journalRowsAPage } from '@ebbline/shared/contract/journal-search';
import { CodedError } from '@ebbline/shared/errors/coded-error';
import type { SettingRecord, SettingStep } from '../../evaluation/alarm-rules/settings/setting-record';
import type { AlertChange, AlertRecord } from '../../evaluation/pipeline/alert-record';
import type { GuidedChange, GuidedRecord } from '../../evaluation/pipeline/guided/guided-record';
import type { HandRecord } from '../../evaluation/pipeline/hand-record';
import type { PermitChange, PermitRecord } from '../../evaluation/pipeline/permit-record';
import type { TightnessChange, TightnessRecord } from '../../evaluation/pipeline/tightness-record';
import type { AlarmRecord } from '../../evaluation/pipeline/outputs';
import type { AlarmJournal, SealDue, SystemEntry, ToldTransition } from '../../ports/alarm-journal';
import type { AuditEntry } from '../../ports/audit';
import { failpoint } from '../../ports/failpoint';
import type { JournalPage, JournalQuery } from '../../ports/journal-query';
import type { NoteEntry } from '../../ports/note-entry';
import type { ProgramEntry } from '../../ports/program-entry';
import { archiveFolderOf } from './archive-file';
import { alertEntry, isAlertName } from './alert-entry';
import { auditEntry } from './audit-entry';
import { batchEntries } from './batch-entries';
import { openJournalDatabase, type JournalDatabase } from './journal-database';
import { guidedEntry, isGuidedName } from './guided-entry';
import { handEntry } from './hand-entry';
import type { ChainedEntry, JournalEntry } from './journal-entry';
import { journalHash } from './journal-hash';
import { journalReading, type JournalReading } from './journal-reading';
import { journalSchemaVersion, migrateJournal } from './journal-schema';
import { JournalSearch } from './journal-search';
import { journalSteps } from './journal-steps';
import { journalStatements, type JournalStatements } from './journal-statements';
import { noteEntry } from './note-entry';
import { journalNotes } from './journal-notes';
import { journalProgram } from './journal-program';
import { isPermitName, permitEntry } from './permit-entry';
import { programEntry } from './program-entry';
import { settingEntry } from './setting-entry';
import { sealArchive } from './seal-archive';
import { standingChange } from './standing-alarms';
import { standingThen } from './standing-then';
import { isTightnessName, tightnessEntry } from './tightness-entry';
import { systemEntry } from './to-journal-entry';
import { toJournalRow } from './to-journal-row';
import { verifyChain } from './verify-chain';
import type { JournalHead } from './verify-journal';

const isAlarmName = (name: string): boolean =>
  !isPermitName(name) && !isAlertName(name) && !isTightnessName(name) && !isGuidedName(name);

/** The journal in one SQLite file. Everything is synchronous: what a call returned is on the disk. */
export class SqliteAlarmJournal implements AlarmJournal {
  readonly #path: string;
  readonly #database: JournalDatabase;
  readonly #statements: JournalStatements;
  readonly #reading: JournalReading;
  readonly #search: JournalSearch;
  readonly #steps: AlarmJournal['steps'];
  readonly #notes: ReturnType<typeof journalNotes>;
  readonly #program: ReturnType<typeof journalProgram>;
  readonly #standingThen: AlarmJournal['standingAt'];
  #head: JournalHead;

  /**
   * @param path the file; it is created where there is none
   * @throws CodedError JOURNAL_OPEN_FAILED, JOURNAL_SCHEMA_NEWER
   */
  constructor(path: string) {
    this.#path = path;
    this.#database = openJournalDatabase(path);
    migrateJournal(this.#database, path);
    this.#statements = journalStatements(this.#database);
    this.#reading = journalReading(this.#database, journalSchemaVersion);
    this.#search = new JournalSearch(this.#database);
    this.#steps = journalSteps(this.#database);
    this.#notes = journalNotes(this.#database);
    this.#program = journalProgram(this.#database);
    this.#standingThen = standingThen(this.#database);
    this.#head = this.#reading.head();
  }

  append(
    transitions: readonly ToldTransition[],
    records: readonly AlarmRecord[],
    wallMs: number,
  ): readonly JournalRow[] {
    return this.#commit(batchEntries(transitions, records, wallMs));
  }

  appendSystem(entry: SystemEntry, wallMs: number): JournalRow {
    const [row] = this.#commit([systemEntry(entry, wallMs)]);
    if (row === undefined) throw new CodedError('JOURNAL_WRITE_FAILED', 'the commit of one entry gave back none');
    return row;
  }

  standing(): readonly AlarmRecord[] {
    const rows = this.#reading.standing().filter(({ alarm }) => isAlarmName(alarm));
    return rows.map((row) => JSON.parse(row.record) as AlarmRecord);
  }

  appendPermits(changes: readonly PermitChange[], wallMs: number): readonly JournalRow[] {
    return this.#commit(changes.map((change) => permitEntry(change, wallMs)));
  }

  appendAlerts(changes: readonly AlertChange[], wallMs: number): readonly JournalRow[] {
    return this.#commit(changes.map((change) => alertEntry(change, wallMs)));
  }

  alerts(): readonly AlertRecord[] {
    const rows = this.#reading.standing().filter(({ alarm }) => isAlertName(alarm));
    return rows.map((row) => JSON.parse(row.record) as AlertRecord);
  }

  appendTightness(changes: readonly TightnessChange[], wallMs: number): readonly JournalRow[] {
    return this.#commit(changes.map((change) => tightnessEntry(change, wallMs)));
  }

  tightness(): readonly TightnessRecord[] {
    const rows = this.#reading.standing().filter(({ alarm }) => isTightnessName(alarm));
    return rows.map((row) => JSON.parse(row.record) as TightnessRecord);
  }

  appendGuided(changes: readonly GuidedChange[], wallMs: number): readonly JournalRow[] {
    return this.#commit(changes.map((change) => guidedEntry(change, wallMs)));
  }

  guided(): readonly GuidedRecord[] {
    const rows = this.#reading.standing().filter(({ alarm }) => isGuidedName(alarm));
    return rows.map((row) => JSON.parse(row.record) as GuidedRecord);
  }

  appendHand(record: HandRecord, wallMs: number): readonly JournalRow[] {
    return this.#commit([handEntry(record, wallMs)]);
  }

  hand(fromMs: number): readonly HandRecord[] {
    return this.#statements.handRecords(fromMs).map((record) => JSON.parse(record) as HandRecord);
  }

  appendSetting(record: SettingRecord, wallMs: number, step?: SettingStep): readonly JournalRow[] {
    return this.#commit([settingEntry(record, wallMs, step)]);
  }

  settings(): readonly SettingRecord[] {
    return this.#statements.settingRecords().map((record) => JSON.parse(record) as SettingRecord);
  }

  settingsWaiting(): readonly SettingRecord[] {
    const decided = new Set(this.settings().map(({ proposal }) => proposal));
    const waiting = new Map<string, SettingRecord>();
    for (const [cause, text] of this.#statements.proposalRecords()) {
      const record = JSON.parse(text) as SettingRecord;
      if (cause === 'settingWithdrawn') waiting.delete(record.id);
      else if (!decided.has(record.id)) waiting.set(record.id, record);
    }
    return [...waiting.values()];
  }

  appendAudit(entries: readonly AuditEntry[], wallMs: number): readonly JournalRow[] {
    return this.#commit(entries.map((entry) => auditEntry(entry, wallMs)));
  }

  appendNotes(entries: readonly NoteEntry[], wallMs: number): readonly JournalRow[] {
    return this.#commit(entries.map((entry) => noteEntry(entry, wallMs)));
  }

  notes(fromMs: number, toMs: number): readonly JournalRow[] {
    return this.#notes(fromMs, toMs).map(toJournalRow);
  }

  appendProgram(entry: ProgramEntry, wallMs: number): readonly JournalRow[] {
    return this.#commit([programEntry(entry, wallMs)]);
  }

  lastOfProgram(): JournalRow | null {
    const newest = this.#program();
    return newest === null ? null : toJournalRow(newest);
  }

  permits(): readonly PermitRecord[] {
    const rows = this.#reading.standing().filter(({ alarm }) => isPermitName(alarm));
    return rows.map((row) => JSON.parse(row.record) as PermitRecord);
  }

  page(query: JournalQuery): JournalPage {
    const { rows, next } = this.#search.find(query, Math.min(query.limit ?? journalRowsAPage, journalRowsAPage));
    return { rows: rows.map(toJournalRow), next };
  }

  steps(query: Parameters<AlarmJournal['steps']>[0]): ReturnType<AlarmJournal['steps']> {
    return this.#steps(query);
  }

  standingAt(atMs: number): ReturnType<AlarmJournal['standingAt']> {
    return this.#standingThen(atMs);
  }

  head(): JournalHead {
    const { sequence, hash } = this.#head;
    return { sequence, hash };
  }

  verify(): { readonly rows: number; readonly brokenAt: number | null } {
    const { rows, brokenAt } = verifyChain(this.#reading, archiveFolderOf(this.#path));
    return { rows, brokenAt };
  }

  sealOldest(due: SealDue): Promise<number> {
    return sealArchive(this.#database, this.#reading, archiveFolderOf(this.#path), due);
  }

  /** Moves what the write-ahead log holds into the file, so that a copy of the one file is whole. */
  close(): void {
    try {
      this.#database.pragma('wal_checkpoint(TRUNCATE)');
    } finally {
      this.#database.close();
    }
  }

  #commit(entries: readonly JournalEntry[]): JournalRow[] {
    if (entries.length === 0) return [];
    const chained = this.#chain(entries);
    try {
      this.#database.transaction(() => this.#write(chained))();
    } catch (cause) {
      const message = `${entries.length} entries could not be committed to ${this.#path}; check disk space and permissions`;
      throw new CodedError('JOURNAL_WRITE_FAILED', message, { cause });
    }
    this.#head = chained.at(-1) ?? this.#head;
    failpoint('journal-after-commit');
    return chained.map(toJournalRow);
  }

  #chain(entries: readonly JournalEntry[]): ChainedEntry[] {
    let { sequence, hash: previousHash } = this.#head;
    return entries.map((entry) => {
      sequence += 1;
      const chained = { ...entry, sequence, previousHash, hash: journalHash(sequence, entry, previousHash) };
      previousHash = chained.hash;
      return chained;
    });
  }

  #write(entries: readonly ChainedEntry[]): void {
    for (const entry of entries) {
      this.#statements.insert(entry);
      const change = standingChange(entry.sequence, entry);
      if (change.kind === 'put') this.#statements.putStanding(change.row);
      if (change.kind === 'remove') this.#statements.removeStanding(change.alarm);
    }
    failpoint('journal-mid-transaction');
    const last = entries.at(-1);
    if (last !== undefined) this.#statements.setHead(last);
    failpoint('journal-before-commit');
  }
}
