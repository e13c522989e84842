import { readFileSync, writeFileSync } from 'node:fs';
import Database from 'libsql';
import { describe, expect, it } from 'vitest';
import { keptSums, keptSumsPath } from '../../../../helpers/kept-sums';

const dayMs = 86_400_000;
const dayAt = (index: number) => ({
  startMs: index * dayMs,
  endMs: (index + 1) * dayMs,
  day: Float64Array.of(index + 0.1, -3),
  hours: Float64Array.of(index, 1 / 3, NaN, 1e300),
});

function filled(path: string, days = 2): void {
  const file = keptSums(path);
  file.keep(
    'unit-1',
    'as told',
    Array.from({ length: days }, (_, index) => dayAt(index)),
  );
  file.close();
}

const daysOf = (path: string, recipe = 'as told', source = 'embedded') =>
  keptSums(path, source).read('day', 'unit-1', recipe, 0, 1000 * dayMs);

describe('EnergySumsFile', () => {
  it('gives back to the last bit what was kept before it was opened again', () => {
    const path = keptSumsPath();
    filled(path);
    const file = keptSums(path);
    expect(file.read('day', 'unit-1', 'as told', 0, dayMs)).toEqual([{ startMs: 0, endMs: dayMs, sums: dayAt(0).day }]);
    expect(file.read('hours', 'unit-1', 'as told', dayMs, 2 * dayMs)[0]?.sums).toEqual(dayAt(1).hours);
    expect(file.untilMs()).toBe(2 * dayMs);
  });

  it('gives nothing of another unit, recipe or history', () => {
    const path = keptSumsPath();
    filled(path);
    expect(keptSums(path).read('day', 'unit-2', 'as told', 0, 1000 * dayMs)).toEqual([]);
    expect(daysOf(path, 'otherwise')).toEqual([]);
    expect(daysOf(path, 'as told', 'history.example/other')).toEqual([]);
    expect(daysOf(path)).toEqual([]);
  });

  it('forgets the days that hold the instants, and no other', () => {
    const path = keptSumsPath();
    filled(path, 4);
    const file = keptSums(path);
    file.forget('unit-1', 2 * dayMs - 1, 2 * dayMs);
    for (const of of ['day', 'hours'] as const)
      expect(file.read(of, 'unit-1', 'as told', 0, 4 * dayMs).map(({ startMs }) => startMs)).toEqual([0, 3 * dayMs]);
  });

  it('is begun anew where the file is nothing of ours, and keeps again', () => {
    const path = keptSumsPath();
    writeFileSync(path, 'nothing of ours '.repeat(1000));
    expect(daysOf(path)).toEqual([]);
    filled(path);
    expect(daysOf(path)).toHaveLength(2);
  });

  it('gives no sum, key or end that was changed by a bit', () => {
    for (const change of [
      `sums = x'${'00'.repeat(16)}'`,
      `sums = x'0000'`,
      `end_ms = end_ms - 1`,
      `holder = 'unit-9'`,
    ]) {
      const path = keptSumsPath();
      filled(path);
      const database = new Database(path);
      database.exec(`UPDATE day SET ${change} WHERE start_ms = 0`);
      database.close();
      const file = keptSums(path);
      const read = (holder: string) => file.read('day', holder, 'as told', 0, 1000 * dayMs);
      expect([...read('unit-1'), ...read('unit-9')].map(({ startMs }) => startMs)).toEqual([dayMs]);
    }
  });

  it('gives right sums or none, wherever 512 bytes of the file are lost', () => {
    const path = keptSumsPath();
    filled(path, 300);
    const whole = readFileSync(path);
    for (let at = 0; at < whole.length; at += 4096) {
      const torn = Buffer.from(whole);
      torn.fill(0xa5, at + 100, at + 612);
      const other = keptSumsPath();
      writeFileSync(other, torn);
      const file = keptSums(other);
      for (const { startMs, sums } of file.read('day', 'unit-1', 'as told', 0, 1000 * dayMs))
        expect(sums).toEqual(dayAt(startMs / dayMs).day);
      for (const { startMs, sums } of file.read('hours', 'unit-1', 'as told', 0, 1000 * dayMs))
        expect(sums).toEqual(dayAt(startMs / dayMs).hours);
      file.keep('unit-1', 'as told', [dayAt(500)]);
      file.close();
    }
  });

  it('does without a file where none can be made', () => {
    const file = keptSums('/proc/none/sums.sqlite');
    file.keep('unit-1', 'as told', [dayAt(0)]);
    expect(file.read('day', 'unit-1', 'as told', 0, dayMs)).toEqual([]);
  });
});
