import { describe, expect, test } from 'vitest';
import { ratedInputs } from '../../../../../simulator/src/plant/plant-inputs';
import { reservoirType } from '../../../../../simulator/src/plant/reservoir-pump/reservoir-type';
import {
  readReservoirPump,
  reservoirState,
  stepReservoirPump,
} from '../../../../../simulator/src/plant/reservoir-pump/step-reservoir-pump';
import { storedGasMol, storedHeatJ, storedWaterM3 } from '../../../../../simulator/src/plant/stored';
import { waterDensityKgPerM3 } from '../../../../../simulator/src/plant/water';

const stepS = 0.1;
const parameters = reservoirType;

function running() {
  const inputs = ratedInputs(parameters);
  const state = reservoirState(parameters);
  const run = (seconds: number): void => {
    for (let i = 0; i < seconds / stepS; i += 1) stepReservoirPump(parameters, state, inputs, stepS);
  };
  run(900);
  const read = (point: string): number => readReservoirPump(parameters, state, inputs).get(point) ?? Number.NaN;
  return { inputs, state, run, read };
}

describe('a pump from a vacuum reservoir into the loop', () => {
  test('comes to rest at its set pressures, its rated flow and its supply temperature', () => {
    const { read } = running();
    expect(read('supply.pressure') / 80_900).toBeCloseTo(1, 2);
    expect(read('separator.pressure') / 32_000).toBeCloseTo(1, 1);
    expect(read('loop.flow') / parameters.ratedFlowM3PerS).toBeCloseTo(1, 1);
    expect(read('supply.temperature')).toBeCloseTo(35, 0);
    expect(read('pump.speed')).toBeGreaterThan(0.6);
    expect(read('pump.speed')).toBeLessThan(1);
  });

  test('gives a larger margin to ambient when the pump is slowed, and less flow', () => {
    const { inputs, run, read } = running();
    const before = {
      margin: inputs.ambientPa - read('supply.pressure'),
      flow: read('loop.flow'),
      n: read('pump.speed'),
    };
    inputs.orders.supplyTankSetPa -= 10_000;
    run(120);
    expect(read('pump.speed')).toBeLessThan(before.n - 0.01);
    expect(inputs.ambientPa - read('supply.pressure')).toBeGreaterThan(before.margin + 9000);
    expect(read('loop.flow')).toBeLessThan(0.95 * before.flow);
  });

  test('loses its flow within seconds when the pump trips, and its supply falls to the return’s pressure', () => {
    const { inputs, run, read } = running();
    inputs.condition.pumpTripped = true;
    run(10);
    expect(read('loop.flow')).toBeLessThan(0.05 * parameters.ratedFlowM3PerS);
    expect(read('supply.pressure')).toBeLessThan(50_000);
    inputs.condition.pumpTripped = false;
    run(120);
    expect(read('loop.flow') / parameters.ratedFlowM3PerS).toBeCloseTo(1, 1);
  });

  test('keeps all water, gas and heat over half an hour with changing load and an open hose', () => {
    const { inputs, state, run } = running();
    const start = {
      water: storedWaterM3(parameters, state),
      gas: storedGasMol(state),
      heat: storedHeatJ(parameters, state),
    };
    const sums = { ...state.sums };
    run(300);
    inputs.loadShare.fill(0.4);
    inputs.opening[1] = { boreM: 0.004, checkValveStuckOpen: false };
    run(300);
    inputs.opening[1] = null;
    run(1200);
    const more = (name: keyof typeof sums): number => state.sums[name] - sums[name];
    const lostM3 = start.water - storedWaterM3(parameters, state);
    expect(lostM3 * waterDensityKgPerM3).toBeCloseTo(more('waterOutM3') * waterDensityKgPerM3, 6);
    expect(storedGasMol(state) - start.gas).toBeCloseTo(more('gasInMol') - more('gasOutMol'), 6);
    const residual =
      more('chipHeatJ') +
      more('pumpHeatJ') -
      more('facilityHeatJ') -
      more('hallHeatJ') -
      more('exhaustHeatJ') -
      (storedHeatJ(parameters, state) - start.heat);
    expect(Math.abs(residual) / more('chipHeatJ')).toBeLessThan(0.005);
  });

  test('has no level, vent or transfer on its supply side to tell', () => {
    const { state, inputs } = running();
    const points = [...readReservoirPump(parameters, state, inputs).keys()];
    expect(points).not.toContain('supplyTank.level');
    expect(points).not.toContain('transfer.flow');
    expect(points).toContain('separator.level');
  });
});
