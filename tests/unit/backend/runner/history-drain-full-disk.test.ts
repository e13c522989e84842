import { describe, expect, it } from 'vitest';
import type { HistoryRows } from '../../../../backend/src/evaluation/pipeline/history-rows';
import type { Pipeline } from '../../../../backend/src/evaluation/pipeline/pipeline';
import type { HistoryLayout, HistoryStore } from '../../../../backend/src/ports/history-store';
import { HistoryDrain } from '../../../../backend/src/runner/history-drain';

/** Lets promises that are settled tell so. */
const settle = () => new Promise<void>((resolve) => setImmediate(resolve));

/** A store whose writes and layouts the test ends by hand, and a ticker that it drives; each row is one layout's. */
function bench() {
  const told: string[] = [];
  const writes: { done: () => void; fail: () => void }[] = [];
  const state = { rows: true, layout: 'a', store: 'ok', refuses: false, waiting: 0, mark: 0, released: 0 };
  const pipeline = {
    drainHistory: () => (state.rows ? ({ count: 2, layout: state.layout } as unknown as HistoryRows) : null),
  } as unknown as Pipeline;
  const store = {
    write: (rows: HistoryRows & { layout: string }) => {
      told.push(`rows of ${rows.layout}`);
      return new Promise<void>((resolve, reject) =>
        writes.push({ done: resolve, fail: () => reject(new Error('queue full')) }),
      );
    },
    useLayout: ({ holders }: HistoryLayout) => {
      told.push(`layout ${holders[0]?.id}`);
      return state.refuses ? Promise.reject(new Error('the disk takes no layout')) : Promise.resolve();
    },
    health: () => ({ state: state.store }),
  } as unknown as HistoryStore;
  const gate = {
    waiting: () => state.waiting,
    mark: () => state.mark,
    release: (mark: number) => void (state.released = Math.max(state.released, mark)),
  };
  const late = new Set<() => void>();
  const ticker = {
    every: (_periodMs: number, work: () => void) => (late.add(work), { stop: () => void late.delete(work) }),
  };
  const drain = new HistoryDrain(pipeline, store, gate, () => 1000, ticker);
  return {
    ...{ drain, told, writes, state, late },
    change: (to: string) =>
      drain.changeLayout({ holders: [{ id: to, columns: [] }] }, () => {
        state.layout = to;
      }),
    hold: (count: number) => {
      state.waiting += count;
      state.mark += count;
    },
    /** Some seconds pass. */
    wait: async (): Promise<void> => {
      for (const one of [...late]) one();
      await settle();
    },
    letGo: async (): Promise<void> => {
      for (const one of writes.splice(0)) one.done();
      await settle();
    },
  };
}

describe('another site while the one before it is not in history yet', () => {
  it('is refused while history refuses the layout of the one before, which is asked on and taken in the end', async () => {
    const { drain, told, state, change, wait, letGo } = bench();
    state.refuses = true;
    await change('b');
    await letGo();
    const second = expect(change('c')).rejects.toMatchObject({ code: 'HISTORY_NOT_WRITTEN' });
    await settle();
    await wait();
    await second;
    expect(state.layout).toBe('b');
    state.refuses = false;
    drain.commit();
    await settle();
    expect(told).toEqual(['rows of a', 'layout b', 'layout b', 'layout b']);
    drain.commit();
    expect(told.at(-1)).toBe('rows of b');
  });

  it('follows it where history takes the layout of the one before meanwhile, with rows in no other than their own', async () => {
    const { drain, told, change, letGo, state } = bench();
    await change('b');
    const second = change('c');
    await settle();
    expect(state.layout).toBe('b');
    await letGo();
    await second;
    drain.commit();
    await letGo();
    expect(told).toEqual(['rows of a', 'layout b', 'rows of b', 'layout c']);
  });

  it('lets acknowledgements go while its layout is refused, or alarms were blind', async () => {
    const { drain, state, change, letGo, hold } = bench();
    state.refuses = true;
    await change('b');
    await letGo();
    hold(3);
    for (let regular = 0; regular < 3; regular++) drain.commit();
    await settle();
    expect(state.released).toBe(0);
    drain.commit();
    expect(state.released).toBe(3);
  });

  it('leaves history going on where it can not be put in force', async () => {
    const { drain, told, letGo } = bench();
    const fault = new Error('no room');
    const refused = drain.changeLayout({ holders: [] }, () => {
      throw fault;
    });
    await expect(refused).rejects.toBe(fault);
    drain.commit();
    expect(told).toEqual(['rows of a', 'rows of a']);
    await letGo();
    expect(drain.rowsUnwritten()).toBe(0);
  });
});

describe('history on a full disk', () => {
  it('refuses another site after some seconds, and takes rows of the one in force on', async () => {
    const { drain, told, state, late, change, wait, letGo } = bench();
    drain.commit();
    const refused = expect(change('b')).rejects.toMatchObject({ code: 'HISTORY_NOT_WRITTEN' });
    drain.commit();
    await settle();
    await wait();
    await refused;
    expect([state.layout, late.size]).toEqual(['a', 0]);
    drain.commit();
    expect(told).toEqual(['rows of a', 'rows of a']);
    await letGo();
    await change('b');
    expect(state.layout).toBe('b');
  });

  it('is waited for at the end for some seconds only, and what it did not take is told', async () => {
    const { drain, state, writes, wait } = bench();
    state.store = 'failing';
    drain.commit();
    let ended = false;
    const flushed = drain.flush().then(() => (ended = true));
    await settle();
    expect(ended).toBe(false);
    await wait();
    await flushed;
    // The store tries once more as it is closed: it takes one and gives the other up.
    writes[0]?.done();
    writes[1]?.fail();
    await settle();
    expect(drain.rowsUnwritten()).toBe(2);
  });

  it('is waited for on while it is well, however long it takes', async () => {
    const { drain, wait, letGo } = bench();
    let ended = false;
    const flushed = drain.flush().then(() => (ended = true));
    await settle();
    await wait();
    await wait();
    expect(ended).toBe(false);
    await letGo();
    await flushed;
    expect(drain.rowsUnwritten()).toBe(0);
  });

  it('tells of rows whose layout was never taken', async () => {
    const { drain, state, change, letGo } = bench();
    state.refuses = true;
    await change('b');
    await letGo();
    await drain.flush();
    expect(drain.rowsUnwritten()).toBe(2);
  });
});

describe('rows that history gave up', () => {
  it('have their acknowledgements held by an early commit that brings nothing new', async () => {
    const { drain, state, writes, hold } = bench();
    hold(2);
    drain.commit();
    writes[0]?.fail();
    await settle();
    state.rows = false;
    drain.commitForWaiting();
    await settle();
    expect(state.released).toBe(0);
  });

  it('have them let go after two seconds without new rows, since a broker waits for them', async () => {
    const { drain, state, writes, hold } = bench();
    hold(2);
    drain.commit();
    writes[0]?.fail();
    await settle();
    state.rows = false;
    for (let regular = 0; regular < 4; regular++) drain.commit();
    await settle();
    expect(state.released).toBe(2);
  });
});
