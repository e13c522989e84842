import { describe, expect, it } from 'vitest';
import { FloodWatch } from '../../../../../backend/src/runner/performance/flood-watch';
import { toJournalStep } from '../../../../../backend/src/runner/performance/to-journal-step';
import { JournalInMemory } from './journal-in-memory';

const startMs = Date.UTC(2026, 4, 1);
const minutes = (count: number): number => startMs + count * 60_000;

function begun(): { journal: JournalInMemory; watch: FloodWatch } {
  const journal = new JournalInMemory();
  const watch = new FloodWatch(journal, () => startMs);
  watch.restore(startMs);
  return { journal, watch };
}

/** Ten units within nine minutes. */
function almost(journal: JournalInMemory, take: (row: ReturnType<JournalInMemory['raise']>) => void): void {
  for (let i = 0; i < 10; i += 1) take(journal.raise(`u${i}:TSUP-1`, minutes(i)));
}

const stepsOf = (...rows: readonly ReturnType<JournalInMemory['raise']>[]) => rows.map(toJournalStep);

const floodRows = ({ rows }: JournalInMemory): (string | null | undefined)[][] =>
  rows
    .filter(({ cause }) => cause?.startsWith('flood'))
    .map(({ cause, sourceTime, reason }) => [cause, sourceTime, reason]);

describe('FloodWatch', () => {
  it('tells one event with what it began with in order, and its begin and end on record', () => {
    const { journal, watch } = begun();
    almost(journal, (row) => watch.take(stepsOf(row)));
    expect(watch.flood()).toBeNull();
    const before = watch.version();
    watch.take(stepsOf(journal.raise('u1:FLOW-1', minutes(9), { foldedUnder: 'u1:TSUP-1' })));
    expect(watch.flood()).toBeNull();

    watch.take(stepsOf(journal.raise('n1:PUMP-1', minutes(9.5))));
    expect(watch.version()).toBeGreaterThan(before);
    expect(watch.flood()).toMatchObject({ from: '2026-05-01T00:09:30.000Z', to: null, annunciations: 11 });
    expect(watch.flood()?.firstOuts.map(({ alarm }) => alarm)).toEqual([
      ...Array.from({ length: 10 }, (_, i) => `u${i}:TSUP-1`),
      'n1:PUMP-1',
    ]);
    watch.settle(minutes(14));
    expect(watch.flood()).not.toBeNull();
    // At 16 those of 7, 8, 9 and 9.5 are left.
    watch.settle(minutes(17));
    expect(watch.flood()).toBeNull();
    expect(floodRows(journal)).toEqual([
      ['floodBegan', '2026-05-01T00:09:30.000Z', expect.stringContaining('11 told within ten minutes')],
      ['floodEnded', '2026-05-01T00:16:00.000Z', expect.stringContaining('11 were told')],
    ]);
  });

  it('begins no flood after a restart for what a clock that ran ahead had written before it was set right', () => {
    const { journal, watch } = begun();
    watch.take(stepsOf(journal.raise('u0:AIR-1', startMs + 365 * 86_400_000)));
    const again = new FloodWatch(journal, () => startMs);
    again.restore(minutes(0));
    // An hour apart: two within ten minutes at most.
    for (let i = 0; i < 12; i += 1) again.take(stepsOf(journal.raise(`u${i}:TSUP-1`, minutes(60 * i))));
    expect(again.flood()).toBeNull();
    expect(floodRows(journal)).toEqual([]);
  });

  it('goes on over a restart, and is not told a second time', () => {
    const { journal, watch } = begun();
    almost(journal, (row) => watch.take(stepsOf(row)));
    watch.take(stepsOf(journal.raise('n1:PUMP-1', minutes(9.5))));
    const again = new FloodWatch(journal, () => startMs);
    again.restore(minutes(10));
    expect(again.flood()).toEqual(watch.flood());
    expect(floodRows(journal).length).toBe(1);
    again.take(stepsOf(journal.raise('n2:PUMP-1', minutes(11))));
    expect(again.flood()?.annunciations).toBe(12);
    again.settle(minutes(30));
    expect(floodRows(journal).map(([cause]) => cause)).toEqual(['floodBegan', 'floodEnded']);
  });

  it('that has gone on for days is told no second time after a restart, and goes on from where it began', () => {
    const { journal, watch } = begun();
    journal.rowsAPage = 1000;
    for (let i = 0; i < 6 * 1440; i += 1) watch.take(stepsOf(journal.raise(`u${i % 40}:TSUP-1`, minutes(i / 2))));
    expect(floodRows(journal).map(([cause]) => cause)).toEqual(['floodBegan']);
    const again = new FloodWatch(journal, () => startMs);
    again.restore(minutes(3 * 1440));
    expect(again.flood()).toEqual(watch.flood());
    again.settle(minutes(3 * 1440 + 30));
    expect(floodRows(journal).map(([cause]) => cause)).toEqual(['floodBegan', 'floodEnded']);
  });

  it('reads at a start only what may still go on, and nothing where no time is known', () => {
    const journal = new JournalInMemory();
    for (let i = 0; i < 400; i += 1) journal.raise('u1:TSUP-1', minutes(i * 60));
    new FloodWatch(journal, () => startMs).restore(minutes(400 * 60));
    // 48 rows, four a page.
    expect(journal.pagesRead).toBeLessThan(15);
    new FloodWatch(journal, () => startMs).restore(Number.NaN);
    expect(journal.pagesRead).toBeLessThan(15);
  });

  it('records at a restart what a kill came before: the begin of one that goes on, the end of one that is over', () => {
    const journal = new JournalInMemory();
    almost(journal, () => undefined);
    journal.raise('n1:PUMP-1', minutes(9.5));
    new FloodWatch(journal, () => startMs).restore(minutes(10));
    expect(floodRows(journal).map(([cause]) => cause)).toEqual(['floodBegan']);
    const later = new FloodWatch(journal, () => startMs);
    later.restore(minutes(300));
    expect(later.flood()).toBeNull();
    expect(floodRows(journal)[1]?.slice(0, 2)).toEqual(['floodEnded', '2026-05-01T00:16:00.000Z']);
    new FloodWatch(journal, () => startMs).restore(minutes(301));
    expect(floodRows(journal).length).toBe(2);
  });

  it('keeps what the journal refuses and records it later, in order', () => {
    const { journal, watch } = begun();
    almost(journal, (row) => watch.take(stepsOf(row)));
    journal.refuses = true;
    watch.take(stepsOf(journal.raise('n1:PUMP-1', minutes(9.5))));
    watch.settle(minutes(20));
    expect(floodRows(journal)).toEqual([]);
    journal.refuses = false;
    watch.settle(minutes(21));
    expect(floodRows(journal).map(([cause]) => cause)).toEqual(['floodBegan', 'floodEnded']);
  });

  it('leaves out of its first-outs what was found to follow from another', () => {
    const { journal, watch } = begun();
    almost(journal, (row) => watch.take(stepsOf(row)));
    watch.take(stepsOf(journal.raise('n1:PUMP-1', minutes(9.5))));
    watch.take(
      stepsOf(journal.raise('u0:TSUP-1', minutes(9.5), { kind: 'system', from: null, foldedUnder: 'u1:TSUP-1' })),
    );
    expect(watch.flood()?.firstOuts.map(({ alarm }) => alarm)).not.toContain('u0:TSUP-1');
    expect(watch.flood()?.annunciations).toBe(11);
  });

  it('keeps no more than it needs over months', () => {
    const { journal, watch } = begun();
    for (let i = 0; i < 5000; i += 1) {
      watch.take(stepsOf(journal.raise('u1:TSUP-1', minutes(i * 20))));
      watch.settle(minutes(i * 20 + 1));
    }
    watch.settle(minutes(5000 * 20));
    for (let i = 0; i < 11; i += 1) watch.take(stepsOf(journal.raise(`u${i}:TSUP-1`, minutes(5000 * 20 + i / 2))));
    expect(watch.flood()).toMatchObject({ annunciations: 11 });
    expect(watch.flood()?.firstOuts.length).toBe(11);
  });
});
