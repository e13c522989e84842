import { describe, expect, it } from 'vitest';
import type { HistoryStore } from '../../../../../backend/src/ports/history-store';
import { WatchedHistory } from '../../../../../backend/src/runner/energy/watched-history';
import { rowsOf } from '../../../../contract/history-samples';
import { keptSums } from '../../../../helpers/kept-sums';

const hour = 3_600_000;
const day = { startMs: 0, endMs: 24 * hour, day: Float64Array.of(1), hours: Float64Array.of(1) };

describe('where sums of energy can not be forgotten', () => {
  it('rows are written all the same, nothing stays under way, and the fault is told', async () => {
    const written: number[] = [];
    const told: unknown[] = [];
    const store = {
      useLayout: () => Promise.resolve(),
      maintain: () => Promise.resolve(),
      write: (rows: { count: number }) => (written.push(rows.count), Promise.resolve()),
    } as unknown as HistoryStore;
    const kept = keptSums();
    kept.keep('a', 'r', [day]);
    kept.forget = () => {
      throw new Error('the disk is read only');
    };
    const history = new WatchedHistory(
      store,
      kept,
      () => 48 * hour,
      (fault) => told.push(fault),
    );
    await history.useLayout({ holders: [{ id: 'a', columns: [] }] });
    await history.write(rowsOf([{ holder: 0, atMs: 3 * hour, values: [] }]));
    expect(written).toEqual([1]);
    expect(told).toMatchObject([{ code: 'ENERGY_SUMS_NOT_FORGOTTEN' }]);
    expect(String(told[0])).toContain('of a, to which late rows were added, could not be forgotten: the disk is read');
    await history.maintain(48 * hour);
    expect(history.overUntilMs('a')).toBe(47 * hour);
  });
});
