import { describe, expect, it } from 'vitest';
import { wakePath } from '../../../../frontend/src/components/wake-path';
import { foldTrail, noTrail } from '../../../../frontend/src/state/fold-trail';

const seen = (cells: readonly (number | null)[]): readonly (readonly [number, number])[] =>
  cells.flatMap((pa, at) => (pa === null ? [] : [[at, pa] as const]));

describe('a trail that goes on', () => {
  it('keeps the lowest and the highest of the minute that runs, and is the same where nothing changes', () => {
    const first = foldTrail(noTrail(100), 100, 32_000.4, 88_000);
    const second = foldTrail(first, 100, 31_000, 87_000);
    expect([second.lowestPa.at(-1), second.highestPa.at(-1)]).toEqual([31_000, 88_000]);
    expect(foldTrail(second, 100, 31_500, 87_000)).toBe(second);
    expect(foldTrail(second, 100, null, 99_000)).toBe(second);
  });

  it('moves on by minutes, leaves open what was not seen, and is never longer than an hour', () => {
    let trail = foldTrail(noTrail(0), 0, 1, 2);
    for (let minute = 1; minute < 500; minute += 1) trail = foldTrail(trail, minute, minute, minute + 1);
    expect([trail.lowestPa.length, trail.highestPa.length]).toEqual([60, 60]);
    expect(trail.lowestPa[0]).toBe(440);
    const after = foldTrail(trail, 502, 9, 10);
    expect(seen(after.lowestPa).slice(-2)).toEqual([
      [56, 499],
      [59, 9],
    ]);
    expect(seen(foldTrail(trail, 5000, 9, 10).lowestPa)).toEqual([[59, 9]]);
  });

  it('is left as it is by a frame of a minute before its last', () => {
    const trail = foldTrail(noTrail(9), 9, 2, 3);
    expect(foldTrail(trail, 8, 1, 4)).toBe(trail);
    expect(foldTrail(trail, 3, 1, 4)).toBe(trail);
  });
});

describe('the picture of a trail', () => {
  const axis = { minPa: 0, maxPa: 100_000, x0: 0, x1: 100 };
  it('has an hour ago on top and now at the bottom, edges where the pressures are, and gaps where nothing was seen', () => {
    const trail = { lowestPa: [10_000, 20_000, null, 30_000], highestPa: [50_000, 60_000, null, 70_000] };
    expect(wakePath(trail, axis, 0, 40)).toBe('M10 0H10V10H20V20H60V10H50V0ZM30 30H30V40H70V30Z');
    expect(wakePath({ lowestPa: [null], highestPa: [null] }, axis, 0, 40)).toBe('');
  });

  it('never leaves the axis', () => {
    expect(wakePath({ lowestPa: [-5], highestPa: [120_000] }, axis, 0, 10)).toBe('M0 0H0V10H100V0Z');
  });
});
