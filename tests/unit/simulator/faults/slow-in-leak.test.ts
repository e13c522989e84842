import { describe, expect, test } from 'vitest';
import { faultSizes } from '../../../../simulator/src/faults/fault';
import { of, plantOf, RunningPlant } from '../run-plant';
import { expectByTable, expectUnmoved } from './expect-change';

/** Seconds that a start/stop source rests between two runs, the mean over an hour. */
function restS(plant: RunningPlant, from: number): number {
  let rests = 0;
  let off = 0;
  let was = 1;
  for (let second = from; second < from + 3600; second += 1) {
    const running = of(plant.at(second), 'vacuum.running');
    off += 1 - running;
    if (was === 0 && running === 1) rests += 1;
    was = running;
  }
  return off / rests;
}

describe('a slow in-leak on M', () => {
  test.each([
    ['small', 5],
    ['usual', 20],
    ['large', 60],
  ] as const)('of size %s adds %d free L/min to the exhaust and moves no flow, pressure or chip', (size, litres) => {
    const plant = new RunningPlant(plantOf('M'));
    const { before } = plant;
    plant.start({ fault: 'slowInLeak', size });
    const after = plant.at(600);
    const change = (point: string): number => of(after, point) - of(before, point);
    expectByTable(change('vacuum.exhaustFlow') * 60000, litres);
    expectUnmoved(change('loop.flow') / of(before, 'loop.flow'), 0.01, 'loop flow');
    expectUnmoved(change('branch.r1.flow') / of(before, 'branch.r1.flow'), 0.01, 'rack flow');
    expectUnmoved(change('separator.pressure'), 300, 'separator pressure');
    expectUnmoved(change('supplyTank.pressure'), 300, 'supply tank pressure');
    expectUnmoved(change('plate.r1a.temperature'), 0.3, 'chips');
    expectUnmoved(change('supply.temperature'), 0.2, 'supply temperature');
    expectUnmoved(change('separator.level'), 0.01, 'separator level');
  });

  test('shortens the rests of a start/stop source from ten minutes to half a minute', () => {
    const tight = plantOf('M', 'startStop');
    // one free L/min in all: the rest is given up by the water
    const plant = new RunningPlant({ ...tight, baseInLeakFreeM3PerS: 0.75 / 60000 });
    expectByTable(restS(plant, 0), 604);
    const leaking = new RunningPlant(tight);
    leaking.start({ fault: 'slowInLeak' });
    expectByTable(restS(leaking, 100), 30);
  });

  test('is gone from the exhaust after the repair', () => {
    const plant = new RunningPlant(plantOf('M'));
    const leak = plant.start({ fault: 'slowInLeak' });
    plant.at(300);
    plant.repair(leak);
    expectUnmoved(
      (of(plant.at(700), 'vacuum.exhaustFlow') - of(plant.before, 'vacuum.exhaustFlow')) * 60000,
      1,
      'exhaust',
    );
  });
});

describe.each(['H', 'bench'] as const)('a slow in-leak on %s', (kind) => {
  test('grows with its size and moves no flow', () => {
    const air = faultSizes.map((size) => {
      const plant = new RunningPlant(plantOf(kind));
      plant.start({ fault: 'slowInLeak', size });
      const after = plant.at(300);
      expectUnmoved(of(after, 'loop.flow') / of(plant.before, 'loop.flow') - 1, 0.01, 'loop flow');
      return of(after, 'vacuum.exhaustFlow');
    });
    expect(air).toEqual([...air].sort((a, b) => a - b));
    expect(air[2]).toBeGreaterThan(2 * (air[0] ?? 0));
  });
});
