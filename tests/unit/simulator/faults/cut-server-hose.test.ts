import { describe, expect, test } from 'vitest';
import { faultSizes } from '../../../../simulator/src/faults/fault';
import { of, plantOf, RunningPlant } from '../run-plant';
import { expectByTable, expectUnmoved } from './expect-change';

/** Twice the accuracy of the pressure sensors: nobody can see less. Pa. */
const pressureUnseenPa = 800;
const litres = (plant: RunningPlant, level: number): number => level * plant.parameters.volumeM3.separatorAreaM2 * 1000;

describe('a server hose cut on M, check valve good', () => {
  const plant = new RunningPlant(plantOf('M'));
  const { before } = plant;
  plant.start({ fault: 'cutServerHose', rack: 4 });
  const at = { 1: plant.at(1), 5: plant.at(5), 10: plant.at(10), 60: plant.at(60), 300: plant.at(300) };
  const change = (second: keyof typeof at, point: string): number => of(at[second], point) - of(before, point);
  const share = (second: keyof typeof at, point: string): number => change(second, point) / of(before, point);

  test('halves the flow of its rack within a second and raises its return pressure', () => {
    expectByTable(share(1, 'branch.r5.flow'), -0.53);
    expectByTable(change(1, 'branch.r5.return.pressure'), 22_000);
  });

  test('pushes water into the separator within five seconds', () => {
    expectByTable(litres(plant, change(5, 'separator.level')), 48);
  });

  test('calls a resting vacuum source to half speed', () => {
    const resting = new RunningPlant(plantOf('M', 'startStop'));
    expect(of(resting.before, 'vacuum.speed')).toBe(0);
    resting.start({ fault: 'cutServerHose', rack: 4 });
    expect(of(resting.at(1), 'vacuum.speed')).toBeLessThan(0.05);
    // it starts at the upper edge of its band: some seconds later than in the table, which says five
    expectByTable(of(resting.at(10), 'vacuum.speed'), 0.5);
  });

  test('shows its air in the exhaust by the first minute, after a dead time', () => {
    expectByTable(change(60, 'vacuum.exhaustFlow') * 60000, 159);
    // the pushed water squeezes the separator's gas at once, the air itself comes later
    expect(change(1, 'vacuum.exhaustFlow') * 60000).toBeLessThan(0.2 * 159);
  });

  test('takes a little flow from the other racks and the loop', () => {
    expectByTable(share(60, 'branch.r1.flow'), -0.07);
    expectByTable(share(60, 'branch.r8.flow'), -0.07);
    expectByTable(share(60, 'loop.flow'), -0.13);
  });

  test('leaves the cut chip to its fans, and its rack a few kelvin warmer', () => {
    // 300 W less 40 W by fans into 350 J/K
    expectByTable(change(5, 'plate.r5b.temperature') / 5, 260 / 350);
    expectByTable(of(at[300], 'plate.r5b.temperature') - 27, 77 - 27);
    expectByTable(change(60, 'plate.r5a.temperature'), 5);
    expectUnmoved(change(300, 'plate.r1a.temperature'), 1.5, 'chips of other racks');
  });

  test('moves neither the supply pressures nor the supply temperature', () => {
    for (const second of [1, 5, 10, 60, 300] as const) {
      expectUnmoved(change(second, 'supplyTank.pressure'), pressureUnseenPa, 'supply tank pressure');
      expectUnmoved(change(second, 'supply.pressure'), pressureUnseenPa, 'supply pressure');
      expectUnmoved(change(second, 'supply.temperature'), 0.5, 'supply temperature');
    }
  });

  test('gives the water back to the pipes once the rack is whole again', () => {
    const cut = plant.faults[0];
    if (!cut) throw new Error('no fault');
    const full = of(plant.at(300), 'separator.level');
    plant.repair(cut);
    expectByTable(litres(plant, of(plant.at(330), 'separator.level') - full), -48);
    expectUnmoved(
      of(plant.at(900), 'branch.r5.flow') / of(before, 'branch.r5.flow') - 1,
      0.03,
      'flow after the repair',
    );
  });
});

describe('the same with the check valve stuck open', () => {
  const plant = new RunningPlant(plantOf('M', 'startStop'));
  const { before } = plant;
  plant.start({ fault: 'cutServerHose', rack: 4, checkValve: 'stuckOpen' });
  const at2 = plant.at(2);
  const at3 = plant.at(3);
  const at60 = plant.at(60);

  test('stops the whole rack in about two seconds', () => {
    expect(of(at2, 'branch.r5.flow') / of(before, 'branch.r5.flow')).toBeLessThan(0.1);
    expect(of(at3, 'branch.r5.flow') / of(before, 'branch.r5.flow')).toBeLessThan(0.01);
  });

  test('is still carried by the vacuum source: the separator pressure stays', () => {
    expectUnmoved(of(at60, 'separator.pressure') - of(before, 'separator.pressure'), 2500, 'separator pressure');
  });

  test('leaves the margin where it was', () => {
    expectUnmoved(
      of(at60, 'supplyTank.pressure') - of(before, 'supplyTank.pressure'),
      pressureUnseenPa,
      'supply tank pressure',
    );
  });

  test('lets the rack come back after the repair', () => {
    const [cut] = plant.faults;
    if (!cut) throw new Error('no fault');
    plant.repair(cut);
    expect(of(plant.at(180), 'branch.r5.flow') / of(before, 'branch.r5.flow')).toBeGreaterThan(0.95);
  });
});

describe.each(['M', 'H'] as const)('the three sizes of a cut on %s', (kind) => {
  const runs = faultSizes.map((size) => {
    const plant = new RunningPlant(plantOf(kind));
    plant.start({ fault: 'cutServerHose', size, rack: 1 });
    const { before } = plant;
    return { size, before, at10: plant.at(10), at60: plant.at(60), standby: plant.state.standbySpeed };
  });

  test('show more air, a lower rack flow and a higher rack pressure the larger they are', () => {
    const air = runs.map(({ before, at60 }) => of(at60, 'vacuum.exhaustFlow') - of(before, 'vacuum.exhaustFlow'));
    const flow = runs.map(({ before, at10 }) => of(at10, 'branch.r2.flow') / of(before, 'branch.r2.flow'));
    const pressure = runs.map(({ at10 }) => of(at10, 'branch.r2.return.pressure'));
    expect(air).toEqual([...air].sort((a, b) => a - b));
    expect(flow).toEqual([...flow].sort((a, b) => b - a));
    expect(pressure).toEqual([...pressure].sort((a, b) => a - b));
    expect((air[0] ?? 0) * 60000).toBeGreaterThan(20);
    expect(flow[0]).toBeLessThan(0.9);
  });

  test('leave supply temperature and supply tank pressure alone', () => {
    for (const { before, at60, size } of runs) {
      expectUnmoved(
        of(at60, 'supply.temperature') - of(before, 'supply.temperature'),
        1,
        `supply temperature (${size})`,
      );
      expectUnmoved(of(at60, 'supplyTank.pressure') - of(before, 'supplyTank.pressure'), 900, `supply tank (${size})`);
    }
  });

  test('call the second vacuum source for the largest alone', () => {
    expect(runs.map(({ standby }) => standby > 0)).toEqual([false, false, true]);
  });
});

describe('an opening of a stated size', () => {
  /** Exhaust of a minute, ten minutes after: the gas has reached it, and what it pushed out of the separator has passed. */
  const exhaust = (plant: RunningPlant): number => {
    let sum = 0;
    for (let second = 541; second <= 600; second += 1) sum += of(plant.at(second), 'vacuum.exhaustFlow') * 1000;
    return sum;
  };

  // Isentropic nozzle, sonic below 0.528 of ambient: any textbook of gas dynamics.
  test.each([10, 45, 100])('lets in %i free L/min on M, as a fault and as work under a permit', (litresPerMin) => {
    const before = exhaust(new RunningPlant(plantOf('M')));
    const cut = new RunningPlant(plantOf('M'));
    cut.start({ fault: 'cutServerHose', rack: 1, size: 'large', freeLPerMin: String(litresPerMin) });
    expect(Math.abs(exhaust(cut) - before - litresPerMin)).toBeLessThan(0.06 * litresPerMin + 0.5);
    const opened = new RunningPlant(plantOf('M'));
    opened.operate('openHose', { rack: 1, freeM3PerS: litresPerMin / 60_000 });
    expect(Math.abs(exhaust(opened) - before - litresPerMin)).toBeLessThan(0.06 * litresPerMin + 0.5);
  });
});

describe('a cut on the bench', () => {
  test.each(faultSizes)('stops its only flow, whatever its size (%s), and trips the heater', (size) => {
    const plant = new RunningPlant(plantOf('bench'));
    plant.start({ fault: 'cutServerHose', size });
    expect(of(plant.at(3), 'loop.flow')).toBe(0);
    const later = plant.at(60);
    expect(of(later, 'branch.r1.power')).toBe(0);
    expect(of(later, 'plate.r1b.temperature')).toBeLessThan(90);
    expectUnmoved(
      of(later, 'supplyTank.pressure') - of(plant.before, 'supplyTank.pressure'),
      pressureUnseenPa,
      'supply tank',
    );
  });
});
