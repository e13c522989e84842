import { describe, expect, test } from 'vitest';
import { faultSizes } from '../../../../simulator/src/faults/fault';
import { of, plantOf, RunningPlant } from '../run-plant';
import { expectByTable, expectUnmoved } from './expect-change';

describe.each(['rise', 'fall'] as const)('a load step (%s) of 40 % on M', (direction) => {
  const plant = new RunningPlant(plantOf('M'));
  const { before } = plant;
  plant.start({ fault: 'loadStep', direction });
  const sign = direction === 'rise' ? 1 : -1;
  const series = Array.from({ length: 600 }, (_, index) => plant.at(index + 1));
  const change = (second: number, point: string): number => {
    const readings = series[second - 1];
    if (!readings) throw new Error('not run so far');
    return sign * (of(readings, point) - of(before, point));
  };

  test('moves the chips with a time constant of 19 s', () => {
    expectByTable(change(19, 'plate.r1a.temperature') / change(90, 'plate.r1a.temperature'), 1 - Math.exp(-1));
  });

  test('reaches the return after a dead time of 14 s', () => {
    const whole = change(120, 'return.temperature');
    expect(change(10, 'return.temperature')).toBeLessThan(0.05 * whole);
    expect(change(45, 'return.temperature')).toBeGreaterThan(0.3 * whole);
  });

  test('moves the supply by 0.8 K at two to three minutes, and it is back by ten', () => {
    const peak = Math.max(...series.map((_, index) => change(index + 1, 'supply.temperature')));
    expectByTable(peak, 0.8);
    expect(change(600, 'supply.temperature')).toBeLessThan(0.2);
  });

  test('moves no flow and no gas', () => {
    for (const second of [10, 60, 300, 600]) {
      expectUnmoved(change(second, 'loop.flow') / of(before, 'loop.flow'), 0.02, 'loop flow');
      expectUnmoved(change(second, 'branch.r3.flow') / of(before, 'branch.r3.flow'), 0.02, 'rack flow');
      expectUnmoved(change(second, 'supplyTank.pressure'), 400, 'supply tank pressure');
    }
    expectUnmoved(change(600, 'vacuum.exhaustFlow') * 60000, 2, 'exhaust');
  });
});

describe.each(['M', 'H', 'bench'] as const)('the three sizes on %s', (kind) => {
  test('change chip power by 20, 40 and 60 %', () => {
    const shares = faultSizes.map((size) => {
      const plant = new RunningPlant(plantOf(kind));
      plant.start({ fault: 'loadStep', size, direction: 'fall' });
      return of(plant.at(5), 'branch.r1.power') / of(plant.before, 'branch.r1.power');
    });
    [0.8, 0.6, 0.4].forEach((share, index) => expect(shares[index]).toBeCloseTo(share, 2));
  });
});
