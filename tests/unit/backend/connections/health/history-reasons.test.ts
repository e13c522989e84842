import { describe, expect, it } from 'vitest';
import { historyReasons } from '../../../../../backend/src/connections/health/history-reasons';

const well = { state: 'ok', message: null, rowsQueued: 0, bytesKept: null } as const;
const putAside = { rows: 12, bytes: 3_400_000, limitBytes: 1e10, sinceMs: Date.UTC(2031, 4, 6, 7, 8, 9) };

describe('what health tells of history', () => {
  it('is nothing while all rows are written', () => {
    expect(historyReasons(well)).toEqual([]);
    expect(historyReasons({ ...well, putAside: null, losses: [] })).toEqual([]);
  });

  it('is, while the store is away, why, and what waits since when, of how much there is room for', () => {
    const [reason, ...more] = historyReasons({ ...well, state: 'failing', message: 'no answer', putAside });
    expect(reason?.code).toBe('HISTORY_FAILING');
    expect(reason?.message).toBe(
      'History is not written: no answer. It is tried again. 12 rows from 2031-05-06T07:08:09.000Z on wait on the disk: 3.4 MB of at most 10000.0 MB.',
    );
    expect(more).toEqual([]);
  });

  it('is, once it is back, what is still to be filled in', () => {
    expect(historyReasons({ ...well, putAside }).map(({ code }) => code)).toEqual(['HISTORY_BEHIND']);
  });

  it('is each loss, after all is written too', () => {
    const losses = ['7 rows lost', 'a block was torn'];
    const told = historyReasons({ ...well, losses });
    expect(told.map(({ code }) => code)).toEqual(['HISTORY_ROWS_LOST', 'HISTORY_ROWS_LOST']);
    expect(told.map(({ message }) => message)).toEqual(losses);
  });
});
