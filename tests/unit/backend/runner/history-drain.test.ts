import { describe, expect, it } from 'vitest';
import type { HistoryRows } from '../../../../backend/src/evaluation/pipeline/history-rows';
import type { Pipeline } from '../../../../backend/src/evaluation/pipeline/pipeline';
import type { HistoryLayout, HistoryStore } from '../../../../backend/src/ports/history-store';
import { HistoryDrain } from '../../../../backend/src/runner/history-drain';

/** A store whose commits the test ends by hand, and a gate that remembers what was let go. */
function bench() {
  const writes: { done: () => void; fail: () => void }[] = [];
  const drains: boolean[] = [];
  const state = { rows: true, waiting: 0, mark: 0, released: 0, store: 'ok' };
  const pipeline = {
    drainHistory: (_nowMs: number, everything: boolean) => {
      drains.push(everything);
      return state.rows ? ({ count: 1 } as unknown as HistoryRows) : null;
    },
  } as unknown as Pipeline;
  const store = {
    write: () =>
      new Promise<void>((resolve, reject) =>
        writes.push({ done: resolve, fail: () => reject(new Error('disk full')) }),
      ),
    health: () => ({ state: state.store }),
  } as unknown as HistoryStore;
  const gate = {
    waiting: () => state.waiting,
    mark: () => state.mark,
    release: (mark: number) => void (state.released = Math.max(state.released, mark)),
  };
  const drain = new HistoryDrain(pipeline, store, gate, () => 1000, ticker);
  const hold = (count: number) => {
    state.waiting += count;
    state.mark += count;
  };
  return { drain, writes, drains, state, hold };
}

/** Of a time that never passes. */
const ticker = { every: () => ({ stop: () => undefined }) };

/** Lets promises that are settled tell so. */
const settle = () => new Promise<void>((resolve) => setImmediate(resolve));

describe('the way into history', () => {
  it('lets acknowledgements go only after the commit, and only those before it', async () => {
    const { drain, writes, state, hold } = bench();
    hold(3);
    drain.commitForWaiting();
    hold(2);
    await settle();
    expect(state.released).toBe(0);
    writes[0]?.done();
    await settle();
    expect(state.released).toBe(3);
  });

  it('lets acknowledgements go while the store takes nothing, or the broker would send no more and alarms were blind', async () => {
    const { drain, state, hold } = bench();
    hold(3);
    state.store = 'failing';
    for (let regular = 0; regular < 3; regular++) drain.commit();
    drain.commitForWaiting();
    await settle();
    expect(state.released).toBe(0);
    drain.commit();
    expect(state.released).toBe(3);
    hold(2);
    drain.commitForWaiting();
    expect(state.released).toBe(5);
  });

  it('holds them where a store that fails puts rows aside and confirms them, until it has', async () => {
    const { drain, writes, state, hold } = bench();
    state.store = 'failing';
    for (let second = 1; second <= 20; second++) {
      hold(1);
      drain.commit();
      await settle();
      expect(state.released).toBe(second - 1);
      writes.at(-1)?.done();
      await settle();
      expect(state.released).toBe(second);
    }
  });

  it('holds them while a store that is well takes long', async () => {
    const { drain, state, hold } = bench();
    hold(3);
    for (let regular = 0; regular < 20; regular++) drain.commit();
    await settle();
    expect(state.released).toBe(0);
  });

  it('writes the unfinished second only where acknowledgements wait', () => {
    const { drain, drains, hold } = bench();
    drain.commit();
    drain.commitForWaiting();
    expect(drains).toEqual([false]);
    hold(1);
    drain.commit();
    expect(drains).toEqual([false, true]);
  });

  it('makes no early commit while one is under way, but goes on with the regular ones', async () => {
    const { drain, writes, hold } = bench();
    hold(1);
    drain.commitForWaiting();
    drain.commitForWaiting();
    expect(writes).toHaveLength(1);
    drain.commit();
    expect(writes).toHaveLength(2);
    for (const write of writes) write.done();
    await settle();
    drain.commitForWaiting();
    expect(writes).toHaveLength(3);
  });

  it('keeps what a refused commit covers, tells why, and lets it go with the next', async () => {
    const { drain, writes, state, hold } = bench();
    hold(1);
    drain.commit();
    writes[0]?.fail();
    await settle();
    expect(state.released).toBe(0);
    expect(drain.trouble()).toBe('disk full');
    drain.commit();
    writes[1]?.done();
    await settle();
    expect(state.released).toBe(1);
    expect(drain.trouble()).toBeNull();
  });

  it('lets refused messages go, which bring no rows, after the writes before them', async () => {
    const { drain, writes, state, hold } = bench();
    hold(1);
    drain.commit();
    hold(1);
    state.rows = false;
    drain.commit();
    await settle();
    expect(state.released).toBe(0);
    writes[0]?.done();
    await settle();
    expect(state.released).toBe(2);
  });
});

describe('a change of layout', () => {
  const layout = {} as HistoryLayout;

  /** Rows carry the order they were drained in; `told` is what the store was asked for, in order. */
  function changing(refusals: number) {
    const told: string[] = [];
    let left = refusals;
    let drained = 0;
    const held: (() => void)[] = [];
    const pipeline = {
      drainHistory: () => ({ count: (drained += 1) }) as unknown as HistoryRows,
    } as unknown as Pipeline;
    const store = {
      write: ({ count }: HistoryRows) => {
        told.push(`write ${count}`);
        return new Promise<void>((resolve) => held.push(resolve));
      },
      useLayout: () => {
        told.push('layout');
        return (left -= 1) < 0 ? Promise.resolve() : Promise.reject(new Error('rows still wait for the disk'));
      },
    } as unknown as HistoryStore;
    const gate = { waiting: () => 0, mark: () => 0, release: () => undefined };
    const drain = new HistoryDrain(pipeline, store, gate, () => 1000, ticker);
    const letGo = async (): Promise<void> => {
      for (const one of held.splice(0)) one();
      await settle();
    };
    return { drain, told, letGo };
  }

  it('writes what is there in the old layout, then changes, then gives the store the new one', async () => {
    const { drain, told, letGo } = changing(0);
    drain.commit();
    const changed = drain.changeLayout(layout, () => told.push('change'));
    await settle();
    expect(told).toEqual(['write 1']);
    await letGo();
    await changed;
    expect(told).toEqual(['write 1', 'change', 'write 2']);
    await letGo();
    expect(told).toEqual(['write 1', 'change', 'write 2', 'layout']);
  });

  it('takes nothing from the pipeline until the store knows the new layout', async () => {
    const { drain, told, letGo } = changing(0);
    await drain.changeLayout(layout, () => undefined);
    drain.commit();
    drain.commitForWaiting();
    expect(told).toEqual(['write 1']);
    await letGo();
    drain.commit();
    expect(told).toEqual(['write 1', 'layout', 'write 2']);
  });

  it('asks again with each commit while the store refuses, and tells why meanwhile', async () => {
    const { drain, told, letGo } = changing(2);
    await drain.changeLayout(layout, () => undefined);
    await letGo();
    expect(drain.trouble()).toBe('rows still wait for the disk');
    drain.commit();
    await settle();
    drain.commit();
    await settle();
    expect(told).toEqual(['write 1', 'layout', 'layout', 'layout']);
    expect(drain.trouble()).toBeNull();
    drain.commit();
    expect(told.at(-1)).toBe('write 2');
  });

  it('ends though the store never takes the new layout', async () => {
    const { drain, letGo } = changing(Infinity);
    await drain.changeLayout(layout, () => undefined);
    await letGo();
    await expect(drain.flush()).resolves.toBeUndefined();
  });
});
