import { describe, expect, test } from 'vitest';
import { ratedInputs } from '../../../../../simulator/src/plant/plant-inputs';
import { readSharedUnit } from '../../../../../simulator/src/plant/shared-loop/shared-readings';
import { sharedLoopState, soundHeader } from '../../../../../simulator/src/plant/shared-loop/shared-loop-state';
import { racksPerUnit, sharedUnitType } from '../../../../../simulator/src/plant/shared-loop/shared-loop-type';
import {
  sharedGasMol,
  sharedHeatJ,
  sharedSum,
  sharedWaterM3,
} from '../../../../../simulator/src/plant/shared-loop/shared-stored';
import { stepSharedLoop, type SharedUnit } from '../../../../../simulator/src/plant/shared-loop/step-shared-loop';
import { waterDensityKgPerM3 } from '../../../../../simulator/src/plant/water';

const stepS = 0.1;
const rated = sharedUnitType.ratedFlowM3PerS;
const perMin = 60_000;

/** Two units, settled at rated load of all eight racks. */
function running() {
  const units: SharedUnit[] = [0, 1].map(() => ({
    parameters: sharedUnitType,
    inputs: ratedInputs({ ...sharedUnitType, racks: racksPerUnit }),
    header: soundHeader(),
  }));
  const state = sharedLoopState(units.map(({ parameters }) => parameters));
  const run = (seconds: number): void => {
    for (let i = 0; i < seconds / stepS; i += 1) stepSharedLoop(units, state, stepS);
  };
  run(900);
  const read = (unit: number, point: string): number =>
    readSharedUnit(sharedUnitType, state, unit, (units[unit] as SharedUnit).inputs).get(point) ?? Number.NaN;
  const unit = (index: number): SharedUnit => units[index] as SharedUnit;
  const litres = (): number[] => state.units.map((each) => 1000 * (each.supplyTankWaterM3 + each.separatorWaterM3));
  return { units, unit, state, run, read, litres };
}

describe('two units on one loop', () => {
  test('share the water of eight racks evenly, each with half', () => {
    const { read } = running();
    const flows = [read(0, 'loop.flow'), read(1, 'loop.flow')];
    expect((flows[0] ?? 0) / (flows[1] ?? 1)).toBeCloseTo(1, 3);
    // with half the flow in each main the racks get a little more than one unit would give them
    expect((flows[0] ?? 0) + (flows[1] ?? 0)).toBeGreaterThan(rated);
    expect((flows[0] ?? 0) + (flows[1] ?? 0)).toBeLessThan(1.1 * rated);
    expect(read(0, 'branch.r4.flow')).toBeCloseTo(read(1, 'branch.r1.flow'), 6);
    expect(read(1, 'branch.r5.flow')).toBeNaN();
  });

  test('pass about 54 L/min of return from one to the other at 1 kPa between their separators, and keep their sum', () => {
    const { unit, run, read, litres } = running();
    const before = litres();
    // a sensor that reads 1 kPa too high: its regulator pulls the true pressure down by as much, within some seconds
    unit(0).inputs.measuredOffset.separatorPa = 1000;
    run(20);
    const settled = litres();
    run(30);
    const after = litres();
    const walked = settled.map((value, i) => (after[i] ?? 0) - value);
    const [low, high] = [read(0, 'separator.pressure'), read(1, 'separator.pressure')];
    expect(high - low).toBeGreaterThan(400);
    // 3 kPa of header loss at 346 L/min: by arithmetic 54 to 58 L/min for each kPa between the separators
    const perKPa = ((walked[0] ?? 0) * 2) / ((high - low) / 1000);
    expect(perKPa).toBeGreaterThan(54 * 0.8);
    expect(perKPa).toBeLessThan(54 * 1.2);
    expect(walked[1]).toBeCloseTo(-(walked[0] ?? 0), 0);
    const sum = (values: readonly number[]): number => values.reduce((all, value) => all + value, 0);
    expect(Math.abs(sum(after) - sum(before))).toBeLessThan(0.5);
  });

  test('carry all racks with one of them while the other stands by behind its check valve', () => {
    const { unit, run, read, litres } = running();
    Object.assign(unit(1).inputs.orders, { pumpOn: false, loopOpen: false });
    run(60);
    const standby = litres()[1] ?? 0;
    run(10);
    expect(read(0, 'loop.flow') / rated).toBeCloseTo(1, 1);
    expect(read(1, 'loop.flow')).toBe(0);
    expect(litres()[1]).toBeCloseTo(standby, 1);
  });

  test('let water back into a standby through a check valve that leaks', () => {
    const { unit, state, run } = running();
    Object.assign(unit(1).inputs.orders, { pumpOn: false, loopOpen: false, supplyTankSetPa: 60_000 });
    run(20);
    const tight = state.units[1]?.supplyTankWaterM3 ?? 0;
    unit(1).header.checkValveLeakShare = 0.1;
    run(20);
    const gained = 1000 * ((state.units[1]?.supplyTankWaterM3 ?? 0) - tight);
    // a tenth of what the main carries at about 12 kPa, for 20 s
    const byArithmetic = (0.1 * rated * perMin * Math.sqrt(12 / 3) * 20) / 60;
    expect(gained / byArithmetic).toBeGreaterThan(0.5);
    expect(gained / byArithmetic).toBeLessThan(1.5);
  });

  test('keep all water, gas and heat together over half an hour with changing load, a walk and an open hose', () => {
    const { units, unit, state, run } = running();
    const types = units.map(({ parameters }) => parameters);
    const start = {
      water: sharedWaterM3(types, state),
      gas: sharedGasMol(types, state),
      heat: sharedHeatJ(types, state),
    };
    const names = ['chipHeatJ', 'pumpHeatJ', 'facilityHeatJ', 'hallHeatJ', 'exhaustHeatJ'] as const;
    const others = ['waterOutM3', 'gasInMol', 'gasOutMol'] as const;
    const sums = new Map([...names, ...others].map((name) => [name, sharedSum(state, name)]));
    unit(0).inputs.orders.separatorSetPa += 300;
    run(300);
    unit(1).inputs.loadShare.fill(0.3);
    unit(0).inputs.opening[2] = { boreM: 0.005, checkValveStuckOpen: false };
    run(120);
    unit(0).inputs.opening[2] = null;
    run(1380);
    const more = (name: (typeof names)[number] | (typeof others)[number]): number =>
      sharedSum(state, name) - (sums.get(name) ?? 0);
    const lost = start.water - sharedWaterM3(types, state);
    expect(lost * waterDensityKgPerM3).toBeCloseTo(more('waterOutM3') * waterDensityKgPerM3, 6);
    expect(sharedGasMol(types, state) - start.gas).toBeCloseTo(more('gasInMol') - more('gasOutMol'), 6);
    const out = more('facilityHeatJ') + more('hallHeatJ') + more('exhaustHeatJ');
    const residual = more('chipHeatJ') + more('pumpHeatJ') - out - (sharedHeatJ(types, state) - start.heat);
    expect(Math.abs(residual) / more('chipHeatJ')).toBeLessThan(0.005);
  });
});
