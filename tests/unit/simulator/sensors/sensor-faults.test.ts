import { describe, expect, test } from 'vitest';
import { seededRandom } from '../../../../simulator/src/scenario/seeded-random';
import {
  sensorFaultKinds,
  type SensorFaultKind,
  type SensorFaultSize,
  type SensorRound,
} from '../../../../simulator/src/sensors/sensor-fault';
import { sensorFaultTable } from '../../../../simulator/src/sensors/sensor-fault-table';
import { sensorKinds } from '../../../../simulator/src/sensors/sensor-kind';
import { sensorKindOf } from '../../../../simulator/src/sensors/sensor-of-point';

const sizes: readonly SensorFaultSize[] = ['small', 'usual', 'large'];

interface Lie {
  readonly fault: SensorFaultKind;
  readonly point: string;
  readonly size?: SensorFaultSize;
  readonly direction?: 'rise' | 'fall';
  readonly meter?: 'electromagneticFlow' | 'ultrasonicFlow';
}

/** What a lying sensor tells second by second, of truths given second by second. */
function told(lie: Lie, truths: readonly Readonly<Record<string, number>>[], ambientPa = () => 101_300) {
  const { fault, point, size = 'usual', direction = 'rise', meter = 'ultrasonicFlow' } = lie;
  const chance = seededRandom(4, 'lies');
  const memory = new Map<string, number>();
  return truths.map((truth) => {
    const round: SensorRound = {
      told: new Map(Object.entries(truth)),
      memory,
      kindOf: (of) => sensorKindOf(of, meter),
      noiseOf: (of, value) => {
        const kind = sensorKinds[sensorKindOf(of, meter)];
        return Math.hypot(kind.noise, kind.noiseShare * value);
      },
      ambientPa: ambientPa(),
      hallC: 25,
      dtS: 1,
      chance,
    };
    sensorFaultTable[fault].distort(round, { fault, size, point, direction }, 1);
    return round.told;
  });
}

const times = (count: number, of: (second: number) => Record<string, number>) =>
  Array.from({ length: count }, (_, second) => of(second));
const deviation = (values: readonly number[]): number => {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  return Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / values.length);
};

describe('a lying sensor', () => {
  test.each(sizes)('that drifts by the %s amount is off by more than its accuracy, up or down', (size) => {
    const truth = [{ 'separator.pressure': 32_000 }];
    const point = 'separator.pressure';
    const up = told({ fault: 'sensorDrift', point, size }, truth)[0]?.get(point) ?? 0;
    const down = told({ fault: 'sensorDrift', point, size, direction: 'fall' }, truth)[0]?.get(point) ?? 0;
    expect(up - 32_000).toBeGreaterThan(sensorKinds.pressure.accuracy);
    expect(up + down).toBeCloseTo(64_000, 6);
  });

  test('that is stuck tells the same to the last digit', () => {
    const values = told(
      { fault: 'sensorStuck', point: 'loop.flow' },
      times(20, (s) => ({ 'loop.flow': 0.005 + s / 1e5 })),
    );
    expect(new Set(values.map((round) => round.get('loop.flow'))).size).toBe(1);
  });

  test.each([
    ['small', 3],
    ['usual', 10],
    ['large', 30],
  ] as const)('that is noisy by the %s size scatters %d times as wide about the same mean', (size, factor) => {
    // the told value's own noise is left out here: √(n² − 1) of it is what the fault adds
    const lie = { fault: 'sensorNoisy', point: 'supplyTank.pressure', size } as const;
    const values = told(
      lie,
      times(4000, () => ({ 'supplyTank.pressure': 74_000 })),
    ).map((round) => round.get('supplyTank.pressure') ?? 0);
    const added = deviation(values);
    expect(Math.hypot(added, sensorKinds.pressure.noise) / sensorKinds.pressure.noise / factor).toBeCloseTo(1, 1);
  });

  test('with its vent plugged counts from the ambient pressure of that moment, so that its gauge reading stands still', () => {
    let ambient = 101_300;
    const lie = { fault: 'ventPlugged', point: 'supply.pressure', size: 'large' } as const;
    const values = told(
      lie,
      times(10, () => ({ 'supply.pressure': 81_000 })),
      () => (ambient -= 100),
    );
    const gauge = values.map((round, s) => (round.get('supply.pressure') ?? 0) - (101_300 - 100 * (s + 1)));
    for (const value of gauge) expect(value).toBeCloseTo(gauge[0] ?? 0, 6);
  });

  test('of flow with bubbles holds its last value if ultrasonic, and scatters if electromagnetic', () => {
    const truths = times(200, (s) => ({ 'branch.r1.flow': 7e-4 + s * 1e-6 }));
    const of = (meter: 'electromagneticFlow' | 'ultrasonicFlow') =>
      told({ fault: 'bubblesAtMeter', point: 'branch.r1.flow', size: 'large', meter }, truths).map(
        (round) => round.get('branch.r1.flow') ?? 0,
      );
    expect(new Set(of('ultrasonicFlow')).size).toBe(1);
    expect(deviation(of('electromagneticFlow'))).toBeGreaterThan(0.1 * 7e-4);
  });

  test('with gas in its impulse line comes late and a little high', () => {
    const point = 'separator.pressure';
    const step = times(200, (s) => ({ [point]: s < 5 ? 32_000 : 52_000 }));
    const values = told({ fault: 'impulseLineGas', point }, step).map((round) => round.get(point) ?? 0);
    expect(values[15]).toBeLessThan(40_000);
    expect(values.at(-1)).toBeGreaterThan(52_000);
    expect(values.at(-1)).toBeLessThan(54_000);
  });

  test('that slipped out of its pocket comes a minute late, and off towards the room', () => {
    const point = 'supply.temperature';
    const step = times(400, (s) => ({ [point]: s < 5 ? 35 : 45 }));
    const values = told({ fault: 'clampOnSensor', point }, step).map((round) => round.get(point) ?? 0);
    // one time constant after the step: 63 % of it (first-order lag)
    expect(((values[64] ?? 0) - (values[0] ?? 0)) / ((values.at(-1) ?? 0) - (values[0] ?? 0))).toBeCloseTo(0.63, 1);
    expect(values.at(-1)).toBeLessThan(44);
  });

  test('swapped with another tells the reading of that one', () => {
    const truth = [{ 'supply.temperature': 35, 'return.temperature': 44 }];
    const [round] = told({ fault: 'swappedSensors', point: 'supply.temperature' }, truth);
    expect([round?.get('supply.temperature'), round?.get('return.temperature')]).toEqual([44, 35]);
  });

  test('with a broken wire tells the end of the scale: now and then, always, or with all of its kind', () => {
    const truths = times(400, () => ({ 'return.temperature': 44, 'supply.temperature': 35 }));
    const codes = (size: SensorFaultSize) =>
      told({ fault: 'fullScaleCode', point: 'return.temperature', size }, truths).map((round) => [
        round.get('return.temperature') === 850,
        round.get('supply.temperature') === 850,
      ]);
    const share = (size: SensorFaultSize, i: 0 | 1): number => codes(size).filter((row) => row[i]).length / 400;
    expect(share('small', 0)).toBeGreaterThan(0.01);
    expect(share('small', 0)).toBeLessThan(0.1);
    expect([share('usual', 0), share('usual', 1)]).toEqual([1, 0]);
    expect([share('large', 0), share('large', 1)]).toEqual([1, 1]);
  });

  test.each(sensorFaultKinds)('by %s leaves every other sensor alone', (fault) => {
    const truth = { 'hall.humidity': 0.4, 'pump.speed': 0.9, 'unit.power': 3000 };
    const point = 'supply.temperature';
    const [round] = told({ fault, point }, [{ ...truth, [point]: 35, 'return.temperature': 44 }]);
    for (const [other, value] of Object.entries(truth)) expect(round?.get(other)).toBe(value);
  });
});
