import { expect, describe, test } from 'vitest';
import { modes } from '@ebbline/shared/contract/http-api';
import { plantModes, type PlantMode } from '../../../../simulator/src/plant/orders';
import { operationKinds } from '../../../../simulator/src/plant/operations/operation';
import { operationTable } from '../../../../simulator/src/plant/operations/operation-table';
import type { UnitKind } from '../../../../simulator/src/plant/plant-parameters';
import type { Readings } from '../../../../simulator/src/plant/plant-readings';
import { of, plantOf, RunningPlant } from '../run-plant';

/** Order of work and what stays alive meanwhile: common practice, no source. Pressures by ρgh where said. */
const mode = (readings: Readings): PlantMode | undefined => plantModes[of(readings, 'mode')];
const kinds: readonly UnitKind[] = ['M', 'H', 'bench'];

test('every operation stands in the table under its own name', () => {
  expect(operationKinds.map((kind) => operationTable[kind].kind)).toEqual([...operationKinds]);
});

test('the modes are those of the contract, in its order', () => {
  expect(plantModes).toEqual(modes);
});

describe.each(kinds)('%s', (kind) => {
  test('stops with its vacuum kept, the plates cool before the flow goes', () => {
    const plant = new RunningPlant(plantOf(kind));
    plant.operate('stop');
    expect(mode(plant.after(2))).toBe('stopping');
    expect(of(plant.read(), 'loop.flow')).toBeGreaterThan(0);
    const stopped = plant.finish(700);
    expect(mode(stopped)).toBe('off');
    const rest = plant.after(120);
    expect(of(rest, 'loop.flow')).toBe(0);
    expect(of(rest, 'plate.r1a.temperature')).toBeLessThan(of(rest, 'supply.temperature') + 1.5);
    expect(of(rest, 'separator.pressure')).toBeLessThan(of(plant.before, 'separator.pressure') + 3000);
    expect(of(rest, 'vacuum.command')).toBe(1);
  });

  test('starts again from that, vacuum and flow before load', () => {
    const plant = new RunningPlant(plantOf(kind));
    plant.operate('stop');
    plant.finish(700);
    plant.after(300);
    plant.operate('start');
    expect(of(plant.after(2), 'branch.r1.power')).toBe(0);
    plant.finish(600);
    const running = plant.after(900);
    expect(mode(running)).toBe('running');
    expect(Math.abs(of(running, 'loop.flow') / of(plant.before, 'loop.flow') - 1)).toBeLessThan(0.01);
    expect(Math.abs(of(running, 'supply.temperature') - of(plant.before, 'supply.temperature'))).toBeLessThan(0.5);
  });

  test('comes to ambient pressure when vented, and back under vacuum', () => {
    const plant = new RunningPlant(plantOf(kind));
    plant.operate('vent');
    plant.finish(1000);
    const vented = plant.after(120);
    expect(mode(vented)).toBe('vented');
    for (const point of ['separator.pressure', 'supplyTank.pressure']) {
      expect(Math.abs(of(vented, point) - 101_300), point).toBeLessThan(800);
    }
    expect(of(vented, 'vacuum.command')).toBe(0);
    plant.operate('evacuate');
    const standing = plant.finish(1200);
    expect(mode(standing)).toBe('standby');
    expect(of(standing, 'separator.pressure')).toBeLessThan(of(plant.before, 'separator.pressure') + 3500);
  });

  test('is drained, filled through the meter, purged and started', () => {
    const plant = new RunningPlant(plantOf(kind));
    const litresBefore = tankLitres(plant);
    plant.operate('stop');
    plant.finish(700);
    plant.operate('drain');
    plant.finish(700);
    expect(tankLitres(plant)).toBeLessThan(0.12 * litresBefore);
    plant.operate('fill');
    expect(mode(plant.after(5))).toBe('filling');
    const full = plant.finish(900);
    expect(tankLitres(plant) / litresBefore).toBeCloseTo(1, 2);
    // what the meter counted is what the tanks were short of
    expect((of(full, 'topUp.volume') * 1000) / litresBefore).toBeCloseTo(0.9, 1);
    plant.operate('purge');
    expect(mode(plant.after(5))).toBe('purging');
    expect(of(plant.read(), 'branch.r1.power')).toBe(0);
    plant.finish(1300);
    plant.operate('start');
    plant.finish(600);
    expect(mode(plant.after(60))).toBe('running');
    expect(of(plant.read(), 'branch.r1.power')).toBeGreaterThan(0);
  });

  test('shows an open hose under a permit as air in the exhaust, and none of it once it is closed', () => {
    const plant = new RunningPlant(plantOf(kind));
    plant.operate('openHose');
    const open = plant.after(120);
    expect(of(open, 'vacuum.exhaustFlow')).toBeGreaterThan(5 * of(plant.before, 'vacuum.exhaustFlow'));
    plant.operate('closeHose');
    const closed = plant.after(900);
    expect(of(closed, 'vacuum.exhaustFlow')).toBeLessThan(2 * of(plant.before, 'vacuum.exhaustFlow') + 2 / 60000);
  });
});

describe('a tightness test on M', () => {
  test('lets the pressure of a good unit rise by less than half a kilopascal in half an hour', () => {
    // 0.5 kPa in 1 m³ in 30 min is 0.16 free L/min (arithmetic; the size is common practice)
    const tight = { ...plantOf('M'), baseInLeakFreeM3PerS: 0.05 / 60000 };
    const plant = new RunningPlant(tight);
    plant.operate('stop');
    plant.finish(700);
    plant.after(1800);
    plant.operate('tightnessTest');
    plant.after(60);
    const from = of(plant.read(), 'separator.pressure');
    expect(mode(plant.after(1700))).toBe('tightnessTest');
    expect(of(plant.read(), 'separator.pressure') - from).toBeLessThan(500);
    expect(mode(plant.finish(120))).toBe('standby');
  });
});

function tankLitres({ state }: RunningPlant): number {
  return (state.supplyTankWaterM3 + state.separatorWaterM3) * 1000;
}
