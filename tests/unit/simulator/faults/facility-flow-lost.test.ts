import { describe, expect, test } from 'vitest';
import { of, plantOf, RunningPlant } from '../run-plant';
import { expectByTable, expectUnmoved } from './expect-change';

describe('facility flow lost on M', () => {
  const plant = new RunningPlant(plantOf('M'));
  const { before } = plant;
  const lost = plant.start({ fault: 'facilityFlowLost' });
  const at = { 20: plant.at(20), 60: plant.at(60), 120: plant.at(120), 300: plant.at(300) };
  const head300 = plant.state.last.suctionHeadM;
  const warmer = (second: keyof typeof at): number =>
    of(at[second], 'supply.temperature') - of(before, 'supply.temperature');

  test('warms the supply by 3.9 K in 20 s, 7.4 K in a minute and 11 K in two', () => {
    expectByTable(warmer(20), 3.9);
    expectByTable(warmer(60), 7.4);
    expectByTable(warmer(120), 11);
  });

  test('sends the facility return up to the loop return', () => {
    const gap = of(at[60], 'return.temperature') - of(at[60], 'facility.return.temperature');
    expect(gap).toBeLessThan(of(before, 'return.temperature') - of(before, 'facility.return.temperature'));
    expect(of(at[20], 'facility.flow')).toBeLessThan(0.05 * of(before, 'facility.flow'));
  });

  test('brings the pump inlet near cavitation in five minutes and the chips to their fans', () => {
    expectByTable(head300, 1.5);
    expectByTable(of(at[300], 'plate.r1a.temperature') - 27, 66 - 27);
  });

  test('moves neither loop flow nor level at first', () => {
    for (const second of [20, 60, 120] as const) {
      expectUnmoved(of(at[second], 'loop.flow') / of(before, 'loop.flow') - 1, 0.03, 'loop flow');
      expectUnmoved(of(at[second], 'supplyTank.level') - of(before, 'supplyTank.level'), 0.02, 'supply tank level');
      expectUnmoved(
        of(at[second], 'supplyTank.pressure') - of(before, 'supplyTank.pressure'),
        600,
        'supply tank pressure',
      );
    }
  });

  test('is over some minutes after the flow is back', () => {
    plant.repair(lost);
    expectUnmoved(
      of(plant.at(1800), 'supply.temperature') - of(before, 'supply.temperature'),
      0.5,
      'supply temperature',
    );
  });
});

describe.each(['M', 'H', 'bench'] as const)('the three sizes on %s', (kind) => {
  const warmedAt = (size: 'small' | 'usual' | 'large', second: number): number => {
    const plant = new RunningPlant(plantOf(kind));
    plant.start({ fault: 'facilityFlowLost', size });
    return of(plant.at(second), 'supply.temperature') - of(plant.before, 'supply.temperature');
  };

  test('warm the supply, the more the larger', () => {
    const second = kind === 'bench' ? 300 : 20;
    const [small, usual, large] = [warmedAt('small', second), warmedAt('usual', second), warmedAt('large', second)];
    expect(small).toBeGreaterThan(0.2);
    expect(usual).toBeGreaterThan(1.3 * small);
    expect(large).toBeGreaterThan(usual);
  });
});
