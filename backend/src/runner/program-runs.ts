import type { JournalRow } from '@ebbline/shared/contract/alarm';
import { CodedError } from '@ebbline/shared/errors/coded-error';
import type { AlarmJournal } from '../ports/alarm-journal';
import type { ProgramEntry } from '../ports/program-entry';

type Before = ProgramEntry['program']['before'];

/** Has the journal tell when the program began to watch and when it ended in order: a run without an end was killed, or lost its power. */
export class ProgramRuns {
  private waiting: { readonly entry: ProgramEntry; readonly wallMs: number } | null = null;
  private begun = false;

  constructor(
    private readonly journal: Pick<AlarmJournal, 'appendProgram' | 'lastOfProgram'>,
    private readonly version: string,
    private readonly wallMs: () => number,
  ) {}

  /** Told once. Where the journal can't be written the program watches all the same, and `retry` tells it later. */
  begin(): void {
    const before = beforeOf(this.journal.lastOfProgram());
    const program = { version: this.version, before };
    const reason = `Ebbline ${this.version} started${wordsOf(before, this.version)}`;
    this.begun = true;
    this.waiting = { entry: { cause: 'programStarted', program, reason }, wallMs: this.wallMs() };
    this.retry();
  }

  retry(): void {
    if (this.waiting === null) return;
    const { entry, wallMs } = this.waiting;
    if (this.append(entry, wallMs)) this.waiting = null;
  }

  /** Where the start could not be told, the end is not: it would read as that of the run before. */
  end(): void {
    this.retry();
    if (!this.begun || this.waiting !== null) return;
    const program = { version: this.version, before: null };
    this.append({ cause: 'programEnded', program, reason: `Ebbline ${this.version} ended in order` }, this.wallMs());
  }

  private append(entry: ProgramEntry, wallMs: number): boolean {
    try {
      this.journal.appendProgram(entry, wallMs);
      return true;
    } catch (fault) {
      // The journal has told its own trouble.
      if (fault instanceof CodedError) return false;
      throw fault;
    }
  }
}

function beforeOf(row: JournalRow | null): Before {
  if (row === null) return null;
  const version = row.facts?.program?.version ?? 'not known';
  return row.cause === 'programEnded'
    ? { version, startedAt: null, endedAt: row.time }
    : { version, startedAt: row.time, endedAt: null };
}

function wordsOf(before: Before, version: string): string {
  if (before === null) return '; no run before it is on record';
  const other = before.version === version ? '' : ` (${before.version})`;
  return before.endedAt === null
    ? `; the run before it${other} did not end in order: it was killed, failed, or lost its power`
    : `; the run before it${other} had ended in order`;
}
