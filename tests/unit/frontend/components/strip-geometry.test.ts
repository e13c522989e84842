import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isTooSmall, lowerWallFigure, stripGeometry } from '../../../../frontend/src/components/strip-geometry';
import { aFigure, aWindow } from '../../../screens/fixtures/builders';

const axis = { minPa: 0, maxPa: 110_000, x0: 0, x1: 1100 };

describe('the strip of a loop', () => {
  it('puts walls, bar and gaps where the pressures stand (10 px a kPa)', () => {
    const strip = stripGeometry(aWindow(), axis);
    expect(strip.lowerWall).toEqual({ x: 0, width: 100 });
    expect(strip.gapLeft).toMatchObject({ x: 100, width: 320 });
    expect(strip.bar).toEqual({ x: 420, width: 440 });
    expect(strip.gapRight).toMatchObject({ x: 860, width: 150 });
    expect(strip.ambient).toEqual({ x: 1010, width: 90 });
    expect(strip.trail).toEqual({ x: 400, width: 475 });
  });

  it('leaves no seam: each part begins where the one before it ends', () => {
    const pressures = fc.tuple(...[0, 1, 2, 3].map(() => fc.double({ min: 0, max: 110_000, noNaN: true })));
    fc.assert(
      fc.property(pressures, (given) => {
        const [wall = 0, lowest = 0, highest = 0, ambient = 0] = [...given].sort((a, b) => a - b);
        const window = aWindow({ lowerWallPa: wall, lowestPa: lowest, highestPa: highest, ambientPa: ambient });
        const { lowerWall, gapLeft, bar, gapRight, ambient: bank } = stripGeometry(window, axis);
        const parts = [lowerWall, gapLeft, bar, gapRight, bank];
        let x = axis.x0;
        for (const part of parts) {
          expect(part?.x).toBeCloseTo(x, 6);
          x += part?.width ?? NaN;
        }
        expect(x).toBeCloseTo(axis.x1, 6);
      }),
    );
  });

  it('turns the gap round where the water stands above room air', () => {
    const strip = stripGeometry(aWindow({ highestPa: 103_000, vacuumMargin: aFigure(-2_000) }), axis);
    expect(strip.gapRight).toMatchObject({ x: 1010, width: 20, tooSmall: true });
  });

  it('judges the gap that is drawn, also while the margin of the second speaks of another wall', () => {
    const window = aWindow({ lowerWallMargin: aFigure(4_800), lowerWallGuardPa: 10_000 });
    expect(stripGeometry(window, axis).gapLeft?.tooSmall).toBe(false);
    expect(lowerWallFigure(window).value).toBe(32_000);
  });

  it('draws nothing where the pressures are not known, and still shows room air', () => {
    const strip = stripGeometry(aWindow({ lowestPa: null, highestPa: null, lowerWallPa: null }), axis);
    expect(strip).toMatchObject({ bar: null, gapLeft: null, gapRight: null, lowerWall: null });
    expect(strip.ambient).not.toBeNull();
  });
});

describe('a margin', () => {
  it('is too small below its guard and not at it', () => {
    expect(isTooSmall(aFigure(4_999), 5_000)).toBe(true);
    expect(isTooSmall(aFigure(5_000), 5_000)).toBe(false);
  });

  it('counts what is not certain against itself', () => {
    expect(isTooSmall(aFigure(5_500, { expandedUncertainty: 600 }), 5_000)).toBe(true);
    expect(isTooSmall(aFigure(5_700, { expandedUncertainty: 600 }), 5_000)).toBe(false);
  });

  it('is not called too small where it or its guard is not known', () => {
    expect(isTooSmall(aFigure(null), 5_000)).toBe(false);
    expect(isTooSmall(aFigure(1), null)).toBe(false);
  });
});
