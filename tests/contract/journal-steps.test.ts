import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { SqliteAlarmJournal } from '../../backend/src/connections/alarm-journal/sqlite-alarm-journal';
import type { JournalStep } from '../../backend/src/evaluation/alarm-performance/journal-step';
import type { AlarmRecord, AlarmTransition } from '../../backend/src/evaluation/pipeline/outputs';
import { toJournalStep } from '../../backend/src/runner/performance/to-journal-step';
import { temporaryFolder, type TemporaryFolder } from '../helpers/temporary-folder';

const startMs = Date.UTC(2026, 4, 1);

const raised = (i: number): AlarmTransition => ({
  alarm: `u${i}:AIR-2`,
  entry: 'AIR-2',
  unit: `u${i}`,
  hall: 'h1',
  from: 'normal',
  to: 'unacknowledged',
  cause: 'conditionTrue',
  priority: 3,
  atMs: startMs + i * 1000,
  sinceMs: startMs + i * 1000 - 500,
  value: 2,
  limit: 1,
  unitOfMeasure: 'm3/s',
  where: null,
  foldedUnder: i % 2 === 0 ? null : 'u0:AIR-1',
  actor: null,
  station: null,
  comment: null,
});

const recordOf = (change: AlarmTransition): AlarmRecord => ({
  ...change,
  state: change.to,
  active: true,
  stateSinceMs: change.atMs,
  acknowledgedBy: null,
  acknowledgedAtMs: null,
});

describe('the steps of the journal', () => {
  let folder: TemporaryFolder;
  let journal: SqliteAlarmJournal;
  beforeEach(async () => {
    folder = await temporaryFolder();
    journal = new SqliteAlarmJournal(join(folder.path, 'journal.sqlite'));
  });
  afterEach(async () => {
    journal.close();
    await folder.stop();
  });

  const all = (fromMs: number | null, toMs: number | null): JournalStep[] => {
    const steps: JournalStep[] = [];
    for (let after: number | null = 0; after !== null;) {
      const page: ReturnType<SqliteAlarmJournal['steps']> = journal.steps({ after, fromMs, toMs });
      steps.push(...page.steps);
      after = page.next;
    }
    return steps;
  };

  it('say the same as the rows that were committed, over more than one page', () => {
    const changes = Array.from({ length: 600 }, (_, i) => raised(i));
    const rows = journal.append(changes, changes.map(recordOf), startMs);
    journal.appendSystem({ atMs: startMs, actor: null, reason: 'a flood', cause: 'floodBegan' }, startMs);
    journal.appendSystem({ atMs: startMs, actor: null, reason: 'started' }, startMs);
    const steps = all(null, null);
    expect(steps.length).toBe(601);
    expect(steps.slice(0, 600)).toEqual(rows.map(toJournalStep));
    expect(steps.at(-1)).toMatchObject({ cause: 'floodBegan', alarm: null, to: null });
  });

  it('keep to a period, and say how an alarm was set aside', () => {
    const aside = {
      ...raised(5),
      to: 'acknowledged',
      cause: 'shelve',
      mode: 'shelved',
      modeFrom: 'inService',
    } as const;
    const changes = [raised(1), raised(3), { ...aside, actor: 'Ada' }, raised(7)];
    journal.append(changes, changes.map(recordOf), startMs);
    const steps = all(startMs + 3000, startMs + 7000);
    expect(steps.map(({ alarm, mode }) => [alarm, mode])).toEqual([
      ['u3:AIR-2', null],
      ['u5:AIR-2', 'shelved'],
    ]);
  });

  it('are none of an empty journal', () => {
    expect(journal.steps({ after: 0, fromMs: null, toMs: null })).toEqual({ steps: [], next: null });
  });
});
