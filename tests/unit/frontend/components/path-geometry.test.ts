import { describe, expect, it } from 'vitest';
import {
  insideStretches,
  linePath,
  pathY,
  placePath,
  topPressure,
  wrapName,
} from '../../../../frontend/src/components/path-geometry';
import { aPlace } from '../../../screens/fixtures/builders';

const frame = { left: 0, right: 400, top: 0, bottom: 200, topPa: 100_000 };

describe('the picture of the water’s way', () => {
  it('breaks the line at a place whose pressure is not known', () => {
    const placed = placePath([aPlace('a', 50_000), aPlace('b', null), aPlace('c', 25_000), aPlace('d', 0)], frame);
    expect(linePath(placed)).toBe('M50.0 100.0M250.0 150.0L350.0 200.0');
  });

  it('stands at the bottom for vacuum and at the top for the highest pressure', () => {
    expect(pathY(frame, 0)).toBe(200);
    expect(pathY(frame, 100_000)).toBe(0);
  });

  it('reaches above room air and above what stands inside the unit', () => {
    expect(topPressure([aPlace('pump', 138_000)], 101_000)).toBe(160_000);
    expect(topPressure([], null)).toBe(120_000);
  });

  it('joins neighbouring places inside the unit into one stretch', () => {
    const inside = { outsideUnit: false };
    const path = [aPlace('a', 1, inside), aPlace('b', 1, inside), aPlace('c', 1), aPlace('d', 1, inside)];
    expect(insideStretches(placePath(path, frame), frame)).toEqual([
      { x: 0, width: 200 },
      { x: 300, width: 100 },
    ]);
  });

  it('wraps names at words', () => {
    expect(wrapName('supply manifold high', 14)).toEqual(['supply', 'manifold high']);
  });
});
