import { ManualClock } from '@ebbline/shared/clock/manual-clock';
import { describe, expect, it } from 'vitest';
import type { AlarmJournal } from '../../../../../backend/src/ports/alarm-journal';
import type { HistoryStore } from '../../../../../backend/src/ports/history-store';
import type { ProgramFigures, ProgramWatch } from '../../../../../backend/src/ports/program-watch';
import { measuredHistory } from '../../../../../backend/src/runner/watch/measured-history';
import { measuredJournal } from '../../../../../backend/src/runner/watch/measured-journal';
import { probeJournal } from '../../../../../backend/src/runner/watch/probe-journal';
import { SystemWatch } from '../../../../../backend/src/runner/watch/system-watch';
import { TickFigures } from '../../../../../backend/src/runner/watch/tick-figures';
import { WriteFigures } from '../../../../../backend/src/runner/watch/write-figures';

const disk = { diskFreeBytes: 5e9, diskBytes: 100e9 };

function bench(kind: 'wall' | 'source' = 'wall') {
  const clock = new ManualClock(0);
  const disks = { refuses: false, health: { state: 'ok' as 'ok' | 'failing', message: null as string | null } };
  const write = (): void => {
    clock.advance(3);
    if (disks.refuses) throw new Error('no room');
  };
  const journalWrites = new WriteFigures();
  const historyWrites = new WriteFigures();
  const journal = measuredJournal(
    { append: () => (write(), [{}, {}]), standing: () => ['as before'] } as unknown as AlarmJournal,
    journalWrites,
    clock,
  );
  const store = measuredHistory(
    {
      write: () => Promise.resolve().then(write),
      health: () => ({ ...disks.health, rowsQueued: 0, bytesKept: null }),
    } as unknown as HistoryStore,
    historyWrites,
    clock,
  );
  let delayS = 0.5;
  const program: ProgramWatch = {
    figures: () => disk as ProgramFigures,
    takeWorstDelayS: () => delayS,
  };
  const waits = { unrecorded: 0, notWritten: null as string | null };
  const watch = { ticks: new TickFigures(), journalWrites, historyWrites, program };
  const system = new SystemWatch(
    { watch, store, unrecorded: () => waits.unrecorded, notWritten: () => waits.notWritten },
    clock,
    kind,
  );
  return { clock, disks, journal, store, system, waits, watch, late: (s: number) => (delayS = s) };
}

describe('what the judge is told of the program', () => {
  it('is measured once a second', () => {
    const { clock, system, late } = bench();
    expect(system.state()).toMatchObject({ threadDelayS: 0.5, freeBytes: 5e9, diskBytes: 100e9 });
    late(2);
    clock.advance(999);
    expect(system.state()?.threadDelayS).toBe(0.5);
    clock.advance(1);
    expect(system.state()?.threadDelayS).toBe(2);
  });

  it('holds the worst lateness of the second, and none on the source clock', () => {
    for (const [kind, lagS] of [
      ['wall', 3.2],
      ['source', 0],
    ] as const) {
      const { system } = bench(kind);
      system.ticked(1000, 1);
      system.ticked(4150, 100);
      system.ticked(4200, 1);
      expect(system.state()?.evaluationLagS).toBeCloseTo(lagS, 9);
    }
  });

  it('says that the journal refuses while the last write was refused, or changes wait', () => {
    const { clock, disks, journal, system, waits } = bench();
    disks.refuses = true;
    expect(() => journal.append([], [], 0)).toThrow('no room');
    expect(system.state()?.journalTrouble).toBe('no room');
    disks.refuses = false;
    journal.append([], [], 0);
    clock.advance(1000);
    expect(system.state()?.journalTrouble).toBeNull();
    waits.unrecorded = 2;
    clock.advance(1000);
    expect(system.state()).toMatchObject({ unrecorded: 2, journalTrouble: 'The journal refuses writes.' });
  });

  it('says why history is not written, by the store or by what came of the last rows', () => {
    const { clock, disks, system, waits } = bench();
    expect(system.state()?.historyTrouble).toBeNull();
    waits.notWritten = 'no room';
    clock.advance(1000);
    expect(system.state()?.historyTrouble).toBe('no room');
    disks.health = { state: 'failing', message: 'no server' };
    clock.advance(1000);
    expect(system.state()?.historyTrouble).toBe('no server');
  });
});

describe('a journal that refused and of which nothing waits', () => {
  it('is asked whether it takes writes again, and keeps a record of it', () => {
    const clock = new ManualClock(0);
    const writes = new WriteFigures();
    const reasons: string[] = [];
    let refuses = true;
    const journal = measuredJournal(
      {
        appendSystem: ({ reason }: { reason: string }) => {
          if (refuses) throw new Error('no room');
          reasons.push(reason);
          return {};
        },
      } as unknown as AlarmJournal,
      writes,
      clock,
    );
    probeJournal(journal, writes, 0, clock);
    writes.failed(new Error('no room'));
    probeJournal(journal, writes, 3, clock);
    expect(writes.refused).toBe(1);
    probeJournal(journal, writes, 0, clock);
    expect([writes.refused, writes.trouble]).toEqual([2, 'no room']);
    refuses = false;
    probeJournal(journal, writes, 0, clock);
    expect(writes.trouble).toBeNull();
    expect(reasons).toHaveLength(1);
  });
});

describe('a measured store', () => {
  it('counts commits, what they hold, how long they take, and what was refused; else it is the same', async () => {
    const { disks, journal, store, watch } = bench();
    journal.append([], [], 0);
    await store.write({ count: 7 } as Parameters<HistoryStore['write']>[0]);
    disks.refuses = true;
    await expect(store.write({ count: 1 } as Parameters<HistoryStore['write']>[0])).rejects.toThrow('no room');
    expect([watch.journalWrites.seconds.count, watch.journalWrites.entries]).toEqual([1, 2]);
    expect([watch.historyWrites.seconds.count, watch.historyWrites.entries, watch.historyWrites.refused]).toEqual([
      1, 7, 1,
    ]);
    expect(watch.historyWrites.seconds.sum).toBeCloseTo(0.003, 9);
    expect(journal.standing()).toEqual(['as before']);
  });
});
