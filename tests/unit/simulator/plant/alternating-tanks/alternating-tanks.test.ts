import { describe, expect, test } from 'vitest';
import { readAlternatingTanks } from '../../../../../simulator/src/plant/alternating-tanks/alternating-readings';
import {
  alternatingState,
  soundTransfer,
} from '../../../../../simulator/src/plant/alternating-tanks/alternating-state';
import {
  alternatingType,
  emptyM3,
  fullM3,
} from '../../../../../simulator/src/plant/alternating-tanks/alternating-type';
import { stepAlternatingTanks } from '../../../../../simulator/src/plant/alternating-tanks/step-alternating-tanks';
import { ratedInputs } from '../../../../../simulator/src/plant/plant-inputs';
import { storedGasMol, storedHeatJ, storedWaterM3 } from '../../../../../simulator/src/plant/stored';
import { freeAirMolPerM3, waterDensityKgPerM3 } from '../../../../../simulator/src/plant/water';

const stepS = 0.1;

/** Settled for twenty minutes at rated load. */
function running() {
  const parameters = { ...alternatingType, baseInLeakFreeM3PerS: 0 };
  const inputs = ratedInputs(parameters);
  const state = alternatingState(parameters);
  const condition = soundTransfer();
  const run = (seconds: number, eachStep: () => void = () => undefined): void => {
    for (let i = 0; i < seconds / stepS; i += 1) {
      stepAlternatingTanks(parameters, state, inputs, condition, stepS);
      eachStep();
    }
  };
  run(1200);
  return { parameters, inputs, state, condition, run };
}

describe('two tanks that alternate', () => {
  test('fill and empty in a saw-tooth, and change over after the swing at the loop’s flow', () => {
    const { state, run } = running();
    const before = state.transfers;
    const levels: number[] = [];
    run(300, () => levels.push(state.loop.supplyTankWaterM3));
    // 140 L at about 173 L/min is a stroke of 49 s: six in five minutes
    expect(state.transfers - before).toBeGreaterThanOrEqual(5);
    expect(state.transfers - before).toBeLessThanOrEqual(7);
    expect(Math.min(...levels)).toBeGreaterThan(emptyM3 - 0.003);
    expect(Math.max(...levels)).toBeLessThan(fullM3 + 0.003);
  });

  test('let the supply dip for one to three seconds at each transfer, and the flow with it', () => {
    const { state, run, parameters } = running();
    const dips: number[] = [];
    let transfers = state.transfers;
    let below = 0;
    let least = Infinity;
    run(300, () => {
      const low = state.loop.last.supplyTankPa < parameters.set.supplyTankPa - 1000;
      if (state.transfers > transfers) transfers = state.transfers;
      if (low) below += stepS;
      else if (below > 0) {
        dips.push(below);
        below = 0;
      }
      least = Math.min(least, state.loop.last.supplyTankPa);
    });
    expect(dips.length).toBeGreaterThanOrEqual(5);
    for (const seconds of dips) {
      expect(seconds).toBeGreaterThan(0.5);
      expect(seconds).toBeLessThan(3);
    }
    expect(least).toBeGreaterThan(parameters.set.supplyTankPa - 15_000);
  });

  test('send out a gas load of their own: water flow times discharge less fill pressure', () => {
    const { state, run, parameters, inputs } = running();
    // whole cycles: from one change-over of the first tank to another
    const toTransfer = (): void => {
      const at = state.transfers;
      while (state.transfers === at) run(stepS);
    };
    toTransfer();
    let mol = 0;
    let waterM3 = 0;
    const until = state.transfers + 6;
    let seconds = 0;
    while (state.transfers < until) {
      run(stepS);
      mol += state.loop.last.exhaustMolPerS * stepS;
      waterM3 += state.loop.last.loopFlowM3PerS * stepS;
      seconds += stepS;
    }
    // Boyle: 100 L/min over 42 kPa is 41 free L/min (arithmetic)
    const freeM3PerS = mol / freeAirMolPerM3 / seconds;
    const byArithmetic = ((waterM3 / seconds) * (parameters.set.supplyTankPa - inputs.orders.separatorSetPa)) / 101_325;
    expect(freeM3PerS / byArithmetic).toBeGreaterThan(0.7);
    expect(freeM3PerS / byArithmetic).toBeLessThan(1.3);
  });

  test('keep all water, gas and heat over an hour with changing load and an open hose', () => {
    const { state, run, parameters, inputs } = running();
    const { loop } = state;
    const start = {
      water: storedWaterM3(parameters, loop),
      gas: storedGasMol(loop),
      heat: storedHeatJ(parameters, loop),
    };
    const sums = { ...loop.sums };
    run(900);
    inputs.loadShare.fill(0.4);
    inputs.opening[1] = { boreM: 0.003, checkValveStuckOpen: false };
    run(900);
    inputs.opening[1] = null;
    run(1800);
    const more = (name: keyof typeof sums): number => loop.sums[name] - sums[name];
    const lostM3 = start.water - storedWaterM3(parameters, loop);
    expect(lostM3 * waterDensityKgPerM3).toBeCloseTo(more('waterOutM3') * waterDensityKgPerM3, 6);
    expect(storedGasMol(loop) - start.gas).toBeCloseTo(more('gasInMol') - more('gasOutMol'), 6);
    const residual =
      more('chipHeatJ') -
      more('facilityHeatJ') -
      more('hallHeatJ') -
      more('exhaustHeatJ') -
      (storedHeatJ(parameters, loop) - start.heat);
    expect(Math.abs(residual) / more('chipHeatJ')).toBeLessThan(0.005);
  });

  test('starve the loop when the transfer fails, and recover when it works again', () => {
    const { state, condition, run, parameters } = running();
    condition.failed = true;
    run(120);
    expect(state.loop.last.loopFlowM3PerS).toBeLessThan(0.2 * parameters.ratedFlowM3PerS);
    condition.failed = false;
    run(120);
    expect(state.loop.last.loopFlowM3PerS).toBeGreaterThan(0.9 * parameters.ratedFlowM3PerS);
  });

  test('empty a tank further when the transfer is late, and change over more often when the switch speaks early', () => {
    const late = running();
    late.condition.lateS = 8;
    let least = Infinity;
    late.run(200, () => (least = Math.min(least, late.state.loop.supplyTankWaterM3)));
    expect(least).toBeLessThan(emptyM3 - 0.015);
    const often = running();
    often.condition.swingShare = 0.3;
    const before = often.state.transfers;
    often.run(300);
    expect(often.state.transfers - before).toBeGreaterThan(12);
  });

  test('tell the level, the pressure and the filling of each tank', () => {
    const { state, parameters, inputs } = running();
    const readings = readAlternatingTanks(parameters, state, inputs);
    const filling = ['tank.t1.filling', 'tank.t2.filling'].map((point) => readings.get(point));
    expect([...filling].sort()).toEqual([0, 1]);
    expect(readings.has('pump.speed')).toBe(false);
    expect(readings.get('supply.temperature')).toBeCloseTo(parameters.set.supplyC, 0);
  });
});
