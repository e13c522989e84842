import { describe, expect, it } from 'vitest';
import { RecentBends } from '../../../../../../backend/src/evaluation/derive/memory/recent-bends';
import { SecondWindows } from '../../../../../../backend/src/evaluation/derive/memory/second-windows';
import { seededDraws } from '../../../../../monte-carlo/draws';

/** A level of 0.5 m with normal noise of `sigma` from second to second. */
function levelled(seconds: number, sigma: number, normal: () => number, windows = new SecondWindows(1)): SecondWindows {
  for (let s = 0; s < seconds; s += 1) windows.push(0, 0.5 + sigma * normal());
  return windows;
}

/** Mean noise over many draws: of one minute it scatters by 13 %. */
function meanOver(draws: number, noise: (normal: () => number) => number): number {
  let sum = 0;
  for (let seed = 1; seed <= draws; seed += 1) sum += noise(seededDraws(seed).normal);
  return sum / draws;
}

describe('the noise of the last minute', () => {
  it('is that of the samples', () => {
    const found = meanOver(200, (normal) => levelled(200, 1e-3, normal).noise(0));
    expect(found / 1e-3).toBeGreaterThan(0.97);
    expect(found / 1e-3).toBeLessThan(1.02);
  });

  it('is what it was while the level is 0 for 20 s, and after', () => {
    for (let seed = 1; seed <= 30; seed += 1) {
      const { normal } = seededDraws(seed);
      const windows = levelled(200, 1e-3, normal);
      for (let s = 1; s <= 150; s += 1) {
        windows.push(0, s <= 20 ? 0 : 0.5 + 1e-3 * normal());
        expect(windows.noise(0)).toBeLessThan(1.6e-3);
        expect(windows.noise(0)).toBeGreaterThan(0.5e-3);
      }
    }
  });

  it('follows a true fivefold rise and fall within a minute, and most of it within half of one', () => {
    const after = (seconds: number, from: number, to: number): number =>
      meanOver(200, (normal) => levelled(seconds, to, normal, levelled(200, from, normal)).noise(0));
    expect(after(62, 1e-3, 5e-3) / 5e-3).toBeGreaterThan(0.95);
    expect(after(30, 1e-3, 5e-3) / 5e-3).toBeGreaterThan(0.6);
    expect(after(62, 5e-3, 1e-3) / 1e-3).toBeLessThan(1.05);
  });

  it('follows any rise within a minute, from a signal that never moved too', () => {
    const found = meanOver(50, (normal) => levelled(62, 1, normal, levelled(200, 0, normal)).noise(0));
    expect(found).toBeGreaterThan(0.95);
  });

  it('counts all steps of a level that moves in coarse ones', () => {
    const bends = new RecentBends(1);
    for (let s = 0; s < 60; s += 1) bends.push(0, s < 2 ? 1 : 0);
    expect(bends.variance(0)).toBeCloseTo(2 / 60, 12);
  });

  it('is rid of a number that is no level at all within a minute', () => {
    const { normal } = seededDraws(7);
    const windows = levelled(200, 1e-3, normal);
    for (let s = 0; s < 10; s += 1) windows.push(0, s % 2 === 0 ? 1e30 : 0);
    expect(levelled(64, 1e-3, normal, windows).noise(0)).toBeLessThan(1.5e-3);
  });
});
