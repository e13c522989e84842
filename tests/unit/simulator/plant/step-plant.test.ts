import { describe, expect, test } from 'vitest';
import { unitTypes } from '../../../../simulator/src/plant/unit-types';
import { of, plantOf, RunningPlant, type Control } from '../run-plant';

/** Spans of the sensors behind the points, SI. */
function spanOf(point: string, ratedFlow: number, racks: number): number {
  if (point.endsWith('temperature')) return 100;
  if (point.endsWith('ressure') || point.endsWith('pressureDrop')) return 160_000;
  if (point === 'vacuum.exhaustFlow') return 600 / 60000;
  if (point.startsWith('branch') && point.endsWith('flow')) return (2 * ratedFlow) / racks;
  if (point.endsWith('flow')) return 2 * ratedFlow;
  if (point.endsWith('power')) return 1e5;
  return 1;
}

describe('a step half as long', () => {
  test.each([
    ['M', 'continuous', 'calm'],
    ['M', 'continuous', 'loadStep'],
    ['M', 'continuous', 'cutServerHose'],
    ['M', 'startStop', 'calm'],
    ['M', 'continuous', 'facilityFlowLost'],
    ['H', 'continuous', 'cutServerHose'],
    ['bench', 'continuous', 'loadStep'],
  ] as const)(
    'moves nothing of %s (%s) by more than half a per cent of its span in 10 min (%s)',
    (kind, control: Control, fault) => {
      const parameters = plantOf(kind, control);
      const whole = new RunningPlant(parameters, 0.1);
      const half = new RunningPlant(parameters, 0.05);
      if (fault !== 'calm') [whole, half].forEach((plant) => plant.start({ fault }));
      let worst = 0;
      let where = '';
      for (let second = 1; second <= 600; second += 1) {
        const readings = whole.at(second);
        for (const [point, value] of half.at(second)) {
          const share =
            Math.abs(value - of(readings, point)) / spanOf(point, parameters.ratedFlowM3PerS, parameters.racks);
          if (share > worst) [worst, where] = [share, `${point} at ${second} s`];
        }
      }
      expect(worst, where).toBeLessThan(0.005);
    },
  );

  test('is not needed to keep a plant at rest where it is', () => {
    const plant = new RunningPlant(unitTypes.M);
    expect(of(plant.at(1), 'supply.temperature')).toBeCloseTo(35, 1);
  });
});
