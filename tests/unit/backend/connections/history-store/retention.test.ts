import { describe, expect, it } from 'vitest';
import type { SealedFile } from '../../../../../backend/src/connections/history-store/embedded/manifest';
import { expiredBefore, expiredFiles } from '../../../../../backend/src/connections/history-store/embedded/retention';

const hour = 3_600_000;
const day = 24 * hour;
const file = (kind: SealedFile['kind'], startMs: number, bytes: number, group = 0): SealedFile => ({
  name: `${kind}-${startMs}-${group}`,
  kind,
  startMs,
  spanMs: kind === 'seconds' ? hour : day,
  group,
  width: 1,
  bytes,
  sum: null,
});
const keep = { rawDays: 1, rawBytes: 100, minuteDays: 2 };

describe('retention', () => {
  it('lets an hour go when its end is as old as the days say, and not a ms earlier', () => {
    const kept = [file('seconds', 0, 1)];
    expect(expiredFiles(kept, hour + day - 1, keep)).toEqual({ files: [], retireBeforeMs: null });
    expect(expiredFiles(kept, hour + day, keep)).toEqual({ files: kept, retireBeforeMs: hour });
  });

  it('lets the oldest hours go, all their files, until what is left fits the bytes', () => {
    const kept = [0, 1, 2].flatMap((at) => [file('seconds', at * hour, 30, 0), file('seconds', at * hour, 30, 1)]);
    const expired = expiredFiles(kept, 3 * hour, keep);
    expect(expired.files.map(({ name }) => name)).toEqual([
      'seconds-0-0',
      'seconds-0-1',
      `seconds-${hour}-0`,
      `seconds-${hour}-1`,
    ]);
    expect(expired.retireBeforeMs).toBe(2 * hour);
  });

  it('counts no minutes among the bytes and lets days of minutes go by age alone', () => {
    const kept = [file('minutes', 0, 1000), file('minutes', day, 1000)];
    expect(expiredFiles(kept, 3 * day - 1, keep).files).toEqual([]);
    expect(expiredFiles(kept, 3 * day, keep)).toEqual({ files: [kept[0]], retireBeforeMs: null });
  });

  it('keeps what an hour that waits to be sealed still needs, and lets go what is older', () => {
    const kept = [
      ...[0, 1, 2].map((at) => file('seconds', at * hour, 1)),
      file('minutes', 0, 1),
      file('minutes', day, 1),
    ];
    const expired = expiredFiles(kept, 5 * day, keep);
    expect(expiredBefore(Infinity, expired)).toEqual(expired);
    const before = (waitingMs: number) => {
      const { files, retireBeforeMs } = expiredBefore(waitingMs, expired);
      return [files.map(({ name }) => name), retireBeforeMs];
    };
    expect(before(2 * hour)).toEqual([['seconds-0-0', `seconds-${hour}-0`], 2 * hour]);
    expect(before(day + hour)).toEqual([
      ['seconds-0-0', `seconds-${hour}-0`, `seconds-${2 * hour}-0`, 'minutes-0-0'],
      3 * hour,
    ]);
    expect(before(0)).toEqual([[], null]);
  });
});
