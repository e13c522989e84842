import { describe, expect, test } from 'vitest';
import { faultKinds, type FaultKind } from '../../simulator/src/faults/fault';
import { operationKinds, type OperationKind } from '../../simulator/src/plant/operations/operation';
import type { UnitKind } from '../../simulator/src/plant/plant-parameters';
import { storedGasMol, storedHeatJ, storedWaterM3 } from '../../simulator/src/plant/stored';
import { seededRandom } from '../../simulator/src/scenario/seeded-random';
import { plantOf, RunningPlant } from '../unit/simulator/run-plant';

const plantFaults = faultKinds.filter((kind) => kind !== 'connectionLost');
const sizes = ['small', 'usual', 'large'] as const;

/** Mass, moles and heat as they stand, with what the plant says came in and went out taken off: three constants. */
function constants({ parameters, state }: RunningPlant): { waterM3: number; gasMol: number; heatJ: number } {
  const { sums } = state;
  const heatIn = sums.chipHeatJ + sums.pumpHeatJ + sums.waterHeatJ;
  return {
    waterM3: storedWaterM3(parameters, state) - sums.waterInM3 + sums.waterOutM3,
    gasMol: storedGasMol(state) - sums.gasInMol + sums.gasOutMol,
    heatJ: storedHeatJ(parameters, state) - heatIn + sums.facilityHeatJ + sums.hallHeatJ + sums.exhaustHeatJ,
  };
}

function expectKept(plant: RunningPlant, before: ReturnType<typeof constants>): void {
  const after = constants(plant);
  const { waterM3, heatJ } = before;
  expect(Math.abs(after.waterM3 - waterM3) / waterM3, 'water').toBeLessThan(1e-9);
  expect(Math.abs(after.gasMol - before.gasMol), 'gas, mol').toBeLessThan(1e-6);
  expect(Math.abs(after.heatJ - heatJ) / plant.state.sums.chipHeatJ, 'heat').toBeLessThan(1e-5);
  expect(Number.isFinite(after.heatJ + after.gasMol + after.waterM3)).toBe(true);
}

describe.each(['M', 'H', 'bench'] as const)('water, gas and heat of %s are kept', (kind) => {
  test.each(plantFaults)('while %s comes in its three sizes and goes', (fault) => {
    for (const size of sizes) {
      const plant = new RunningPlant(plantOf(kind));
      const before = constants(plant);
      const active = plant.start({ fault, size, rack: 0, checkValve: 'stuckOpen' });
      plant.after(150);
      plant.repair(active);
      plant.after(60);
      expectKept(plant, before);
    }
  });

  test('through a day of work: stop, vent, evacuate, drain, fill, purge, start', () => {
    const plant = new RunningPlant(plantOf(kind));
    const before = constants(plant);
    const day: OperationKind[] = ['isolateBranch', 'restoreBranch', 'openHose', 'closeHose', 'topUp', 'stop'];
    day.push('standby', 'vent', 'evacuate', 'drain', 'fill', 'purge', 'start');
    expect(new Set([...day, 'tightnessTest'])).toEqual(new Set(operationKinds));
    for (const operation of day) {
      plant.operate(operation);
      plant.finish(1500);
      plant.after(60);
    }
    expectKept(plant, before);
  });

  test('with any two faults at once, twenty pairs drawn', () => {
    for (const [one, two] of pairs(kind, 20)) {
      const plant = new RunningPlant(plantOf(kind));
      const before = constants(plant);
      plant.start({ fault: one, size: 'large' });
      plant.after(20);
      plant.start({ fault: two, size: 'large', rack: plant.parameters.racks - 1 });
      plant.after(100);
      expectKept(plant, before);
    }
  });
});

function pairs(kind: UnitKind, count: number): (readonly [FaultKind, FaultKind])[] {
  const source = seededRandom(11, `pairs ${kind}`);
  const draw = (): FaultKind => plantFaults[Math.floor(source.uniform() * plantFaults.length)] as FaultKind;
  return Array.from({ length: count }, () => [draw(), draw()] as const);
}
