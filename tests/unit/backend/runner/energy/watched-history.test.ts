import { describe, expect, it } from 'vitest';
import type { HistoryStore } from '../../../../../backend/src/ports/history-store';
import { WatchedHistory } from '../../../../../backend/src/runner/energy/watched-history';
import { rowsOf } from '../../../../contract/history-samples';
import { keptSums } from '../../../../helpers/kept-sums';

const hour = 3_600_000;
const day = { startMs: 0, endMs: 24 * hour, day: Float64Array.of(1), hours: Float64Array.of(1) };

/** A store whose writes last until they are let go. */
function slowStore() {
  const waiting: (() => void)[] = [];
  const maintaining: (() => void)[] = [];
  const store = {
    useLayout: () => Promise.resolve(),
    maintain: () => new Promise<void>((done) => maintaining.push(done)),
    write: () => new Promise<void>((done) => waiting.push(done)),
  };
  const letGo = () => waiting.splice(0).forEach((done) => done());
  const endMaintenance = () => maintaining.splice(0).forEach((done) => done());
  return { store: store as unknown as HistoryStore, letGo, endMaintenance };
}

async function watched() {
  const { store, letGo, endMaintenance } = slowStore();
  const kept = keptSums();
  const clock = { ms: 48 * hour };
  const history = new WatchedHistory(store, kept, () => clock.ms);
  await history.useLayout({ holders: ['a', 'b'].map((id) => ({ id, columns: [] })) });
  const maintain = async (): Promise<void> => {
    const maintained = history.maintain(clock.ms);
    endMaintenance();
    await maintained;
  };
  for (const holder of ['a', 'b']) kept.keep(holder, 'r', [day]);
  const write = (holder: number, atMs: number) => history.write(rowsOf([{ holder, atMs, values: [] }]));
  const isKept = (holder: string) => kept.read('day', holder, 'r', 0, 1).length === 1;
  return { history, clock, write, letGo, isKept, maintain, endMaintenance };
}

describe('WatchedHistory', () => {
  it('forgets the day of a late row before the row is written, of its unit alone', async () => {
    const { history, write, letGo, isKept } = await watched();
    const writing = write(0, 3 * hour);
    expect([isKept('a'), isKept('b')]).toEqual([false, true]);
    expect([history.version('a'), history.version('b')]).toEqual([1, 0]);
    letGo();
    await writing;
  });

  it('takes nothing to be over before the first maintenance, nor what a write under way may still change', async () => {
    const { history, write, letGo, maintain } = await watched();
    expect(history.overUntilMs('b')).toBe(-Infinity);
    await maintain();
    expect(history.overUntilMs('b')).toBe(47 * hour);
    const writing = write(0, 3 * hour);
    expect(history.overUntilMs('b')).toBe(3 * hour);
    letGo();
    await writing;
    expect(history.overUntilMs('b')).toBe(47 * hour);
  });

  it('takes nothing of a unit to be over from a late row on, until a maintenance that began after its commit has ended', async () => {
    const { history, write, letGo, maintain, endMaintenance } = await watched();
    await maintain();
    const writing = write(0, 3 * hour);
    await maintain();
    letGo();
    await writing;
    expect([history.overUntilMs('a'), history.overUntilMs('b')]).toEqual([3 * hour, 47 * hour]);
    const maintained = history.maintain(48 * hour);
    expect(history.overUntilMs('a')).toBe(3 * hour);
    endMaintenance();
    await maintained;
    expect(history.overUntilMs('a')).toBe(47 * hour);
  });

  it('takes nothing to be over before there is a time', async () => {
    const { history, clock, maintain } = await watched();
    await maintain();
    clock.ms = NaN;
    expect(history.overUntilMs('a')).toBe(-Infinity);
  });

  it('forgets also what was kept while the clock ran ahead', async () => {
    const { clock, write, letGo, isKept } = await watched();
    clock.ms = 10 * hour;
    const writing = write(1, 10 * hour);
    expect([isKept('a'), isKept('b')]).toEqual([true, false]);
    letGo();
    await writing;
  });

  it('leaves alone what is kept when rows of now come', async () => {
    const { history, write, letGo, isKept } = await watched();
    const writing = write(0, 48 * hour);
    letGo();
    await writing;
    expect([isKept('a'), history.version('a')]).toEqual([true, 0]);
  });

  it('takes nothing to be over that was put aside, until it is written and the minutes are made of it', async () => {
    const { store, endMaintenance } = slowStore();
    const aside = { fromMs: 5 * hour };
    const history = new WatchedHistory(
      Object.assign(store, { waitingFromMs: () => aside.fromMs }),
      keptSums(),
      () => 48 * hour,
    );
    const maintain = async (): Promise<void> => {
      const maintained = history.maintain(48 * hour);
      endMaintenance();
      await maintained;
    };
    expect(history.waitingFromMs()).toBe(5 * hour);
    await maintain();
    expect(history.overUntilMs('a')).toBe(5 * hour);
    aside.fromMs = Infinity;
    expect(history.overUntilMs('a')).toBe(5 * hour);
    await maintain();
    expect(history.overUntilMs('a')).toBe(47 * hour);
  });
});
