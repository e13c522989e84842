import type { JournalRow } from '@ebbline/shared/contract/alarm';
import { CodedError } from '@ebbline/shared/errors/coded-error';
import { describe, expect, it } from 'vitest';
import type { ProgramEntry } from '../../../../backend/src/ports/program-entry';
import { ProgramRuns } from '../../../../backend/src/runner/program-runs';

const startMs = Date.UTC(2031, 4, 6, 7);

/** A journal that keeps what it is told, and can refuse. */
class Journal {
  readonly told: (ProgramEntry & { readonly wallMs: number })[] = [];
  refuses = false;

  appendProgram(entry: ProgramEntry, wallMs: number): readonly JournalRow[] {
    if (this.refuses) throw new CodedError('JOURNAL_WRITE_FAILED', 'the disk is full');
    this.told.push({ ...entry, wallMs });
    return [];
  }

  lastOfProgram(): JournalRow | null {
    const last = this.told.at(-1);
    if (last === undefined) return null;
    const { cause, program, wallMs } = last;
    return { cause, facts: { program }, time: new Date(wallMs).toISOString() } as JournalRow;
  }
}

function plant() {
  const journal = new Journal();
  let wallMs = startMs;
  const run = (version = '0.9.0') => new ProgramRuns(journal, version, () => wallMs);
  return {
    journal,
    run,
    wait: (ms: number) => (wallMs += ms),
    reasons: () => journal.told.map(({ reason }) => reason),
  };
}

describe('the runs of the program', () => {
  it('are told with version, and how the run before ended', () => {
    const { run, reasons, journal, wait } = plant();
    const first = run('0.8.0');
    first.begin();
    wait(60_000);
    first.end();
    wait(60_000);
    run().begin();
    expect(reasons()).toEqual([
      'Ebbline 0.8.0 started; no run before it is on record',
      'Ebbline 0.8.0 ended in order',
      'Ebbline 0.9.0 started; the run before it (0.8.0) had ended in order',
    ]);
    const endedAt = '2031-05-06T07:01:00.000Z';
    expect(journal.told[2]?.program.before).toEqual({ version: '0.8.0', startedAt: null, endedAt });
  });

  it('are told to have ended without order where the journal has no end', () => {
    const { run, reasons, journal, wait } = plant();
    run().begin();
    wait(1000);
    run().begin();
    expect(reasons()[1]).toBe(
      'Ebbline 0.9.0 started; the run before it did not end in order: it was killed, failed, or lost its power',
    );
    const startedAt = '2031-05-06T07:00:00.000Z';
    expect(journal.told[1]?.program.before).toEqual({ version: '0.9.0', startedAt, endedAt: null });
  });

  it('are told once the journal can be written, at the time when they began', () => {
    const { journal, run, wait } = plant();
    const runs = run();
    journal.refuses = true;
    runs.begin();
    wait(5000);
    runs.retry();
    journal.refuses = false;
    runs.retry();
    runs.retry();
    expect(journal.told.map(({ cause, wallMs }) => [cause, wallMs])).toEqual([['programStarted', startMs]]);
  });

  it('have no end where they had no beginning: it would read as that of another run', () => {
    const { journal, run } = plant();
    run().end();
    expect(journal.told).toEqual([]);
    const runs = run();
    journal.refuses = true;
    runs.begin();
    runs.end();
    journal.refuses = false;
    expect(journal.told).toEqual([]);
  });
});
