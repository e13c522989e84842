import { describe, expect, it } from 'vitest';
import { orderPermits } from '../../../../frontend/src/components/order-permits';
import { permitWish, wholeLoop } from '../../../../frontend/src/components/permit-wish';
import { tankPicture, tankScale } from '../../../../frontend/src/components/tank-geometry';
import { groupLoops } from '../../../../frontend/src/screens/hall/group-loops';
import { smallestReserve } from '../../../../frontend/src/screens/hall/smallest-reserve';
import { toPointMap } from '../../../../frontend/src/screens/loop/point-map';
import { vesselsOf } from '../../../../frontend/src/screens/loop/vessels';
import { sayWaterWalk } from '../../../../frontend/src/screens/loop/water-walk';
import { countArrivals } from '../../../../frontend/src/screens/setup/count-arrivals';
import { aFigure, aLine, aPermit, aReading, aSite } from '../../../screens/fixtures/builders';

const perMinute = (litres: number) => aReading('x', litres / 60_000, 'm3/s');

describe('water between the units of one loop', () => {
  const rates = (supplyTank: number, separator: number, loop: number) => ({
    supplyTank: perMinute(supplyTank),
    separator: perMinute(separator),
    loop: perMinute(loop),
  });
  it('walks to the unit that gains, from the one that gains, and the sum stands', () => {
    expect(sayWaterWalk(rates(0, 54, 1), 'E7', ['E1'])).toBe('Water is moving from E1 to E7.');
    expect(sayWaterWalk(rates(-10, -44, -1), 'E7', ['E1'])).toBe('Water is moving from E7 to E1.');
  });

  it('does not walk where the sum moves as well, where it only sloshes, or where a unit is alone', () => {
    expect(sayWaterWalk(rates(0, -54, -50), 'E7', ['E1'])).toBeNull();
    expect(sayWaterWalk(rates(1, -0.5, 0), 'E7', ['E1'])).toBeNull();
    expect(sayWaterWalk(rates(0, 54, 0), 'E7', [])).toBeNull();
  });

  it('is not guessed where the sum is not known', () => {
    expect(sayWaterWalk({ ...rates(0, 54, 0), loop: undefined }, 'E7', ['E1'])).toBeNull();
    expect(sayWaterWalk({ ...rates(0, 54, 0), loop: aReading('x', null, 'm3/s') }, 'E7', ['E1'])).toBeNull();
  });
});

describe('the tanks of a unit', () => {
  it('are those that it has points for', () => {
    const points = toPointMap([aReading('separator.level', 0.4, 'm')]);
    expect(vesselsOf(aSite().units[0], points).map(({ name }) => name)).toEqual(['Separator']);
    expect(vesselsOf(undefined, toPointMap([]))).toEqual([]);
  });

  it('share a scale in whole steps above the highest level and mark', () => {
    expect(tankScale([0.5, null], [{ level: 0.8, side: 'above' }])).toBeCloseTo(1, 9);
    expect(tankScale([null], [])).toBeCloseTo(0.2, 9);
  });

  it('are drawn full and empty at the ends, never beyond', () => {
    expect(tankPicture(0, [], 1, 100).waterY).toBe(100);
    expect(tankPicture(2, [], 1, 100).waterY).toBe(0);
    expect(tankPicture(null, [], 1, 100).waterY).toBeNull();
  });
});

describe('a hall', () => {
  it('keeps the order of its units where none share a loop', () => {
    const groups = groupLoops([aLine('e1'), aLine('e7')], aSite().loops);
    expect(groups.map(({ title, lines }) => [title, lines.length])).toEqual([
      [null, 1],
      [null, 1],
    ]);
  });

  it('has its smallest reserve where one is known', () => {
    const lines = [
      aLine('e1', { vacuumReserve: aFigure(null) }),
      aLine('e7'),
      aLine('e8', { vacuumReserve: aFigure(-0.001) }),
    ];
    expect(smallestReserve(lines)?.unit).toBe('e8');
    expect(smallestReserve(lines.slice(0, 1))).toBeNull();
  });
});

describe('permits', () => {
  it('stand overdue first, then by what ends first', () => {
    const at = (hour: number): string => `2026-03-01T${String(hour).padStart(2, '0')}:00:00.000Z`;
    const permits = [
      aPermit('a', { until: at(15) }),
      aPermit('b', { until: at(14) }),
      aPermit('c', { state: 'overdue' }),
    ];
    expect(orderPermits(permits).map(({ id }) => id)).toEqual(['c', 'b', 'a']);
  });

  it('are wished for in the units of the contract, and only where all of it can be meant', () => {
    const form = { branch: 'r1', minutes: 30 as const, litresPerMinute: 60 as const, comment: ' x ' };
    const now = '2026-03-01T12:00:00.000Z';
    expect(permitWish(form, now)).toEqual({
      branch: 'r1',
      until: '2026-03-01T12:30:00.000Z',
      expectedInLeak: 0.001,
      comment: 'x',
    });
    expect(permitWish({ ...form, branch: wholeLoop }, now)?.branch).toBeNull();
    for (const wrong of [{ minutes: 0 }, { minutes: '' as const }, { minutes: 1441 }, { litresPerMinute: -1 }])
      expect(permitWish({ ...form, ...wrong }, now)).toBeNull();
    expect(permitWish(form, null)).toBeNull();
  });
});

describe('arrivals', () => {
  it('are counted by how they fare', () => {
    expect(countArrivals([{ arriving: 'arriving' }, { arriving: 'silent' }, { arriving: 'never' }])).toBe(
      '1 of 3 points arrive, 1 fell silent, 1 never came',
    );
    expect(countArrivals([{ arriving: 'arriving' }])).toBe('1 of 1 points arrive');
  });
});
