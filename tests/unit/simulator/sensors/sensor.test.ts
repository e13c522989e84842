import { describe, expect, test } from 'vitest';
import { makeSensor, senseValue } from '../../../../simulator/src/sensors/sensor';
import { sensorKinds, type SensorKindName } from '../../../../simulator/src/sensors/sensor-kind';
import { sensorKindOf } from '../../../../simulator/src/sensors/sensor-of-point';
import { seededRandom } from '../../../../simulator/src/scenario/seeded-random';

function series(kind: SensorKindName, truth: (second: number) => number, seconds: number, seed = 3): number[] {
  const sensor = makeSensor(sensorKinds[kind], seededRandom(seed, 'drawn'));
  const noise = seededRandom(seed, 'noise');
  return Array.from({ length: seconds }, (_, second) => senseValue(sensor, truth(second), second, 1, noise));
}

const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;
const deviation = (values: readonly number[]): number => {
  const middle = mean(values);
  return Math.sqrt(mean(values.map((value) => (value - middle) ** 2)));
};

/** Noise at 1 s and accuracy of common sensors: common practice, no source. */
describe('noise of a sensor', () => {
  test.each([
    ['pressure', 74_000, 50],
    ['barometer', 101_000, 10],
    ['temperature', 40, 0.015],
    ['level', 0.5, 0.0005],
    ['electromagneticFlow', 0.005, 0.004 * 0.005],
    ['exhaustFlow', 0.003, 0.01 * 0.003],
  ] as const)('of kind %s at %d has the deviation %d', (kind, truth, expected) => {
    const told = series(kind, () => truth, 20_000);
    // the deviation of a sample of 20,000 is known to 0.5 %
    expect(deviation(told) / expected).toBeGreaterThan(0.98);
    expect(deviation(told) / expected).toBeLessThan(1.02);
  });

  test('does not hang together from second to second', () => {
    const told = series('pressure', () => 74_000, 20_000);
    const middle = mean(told);
    const product = mean(told.slice(1).map((value, index) => (value - middle) * ((told[index] ?? 0) - middle)));
    expect(Math.abs(product / deviation(told) ** 2)).toBeLessThan(0.03);
  });
});

describe('accuracy', () => {
  test('is drawn once for each sensor, evenly within its half-width', () => {
    const source = seededRandom(11, 'many');
    const offsets = Array.from({ length: 4000 }, () => makeSensor(sensorKinds.pressure, source).offset);
    expect(Math.max(...offsets)).toBeLessThanOrEqual(400);
    expect(Math.min(...offsets)).toBeGreaterThanOrEqual(-400);
    expect(deviation(offsets) / (400 / Math.sqrt(3))).toBeCloseTo(1, 1);
  });

  test('stays the same over a day', () => {
    const told = series('pressure', () => 74_000, 86_400 / 4);
    const first = mean(told.slice(0, 5000));
    const last = mean(told.slice(-5000));
    expect(Math.abs(first - last)).toBeLessThan(5);
  });
});

describe('a sensor', () => {
  test('in a pocket shows 63 % of a step after its time constant', () => {
    const told = series('temperature', (second) => (second === 0 ? 30 : 40), 61);
    const start = told[0] ?? 0;
    const end = mean(told.slice(-5));
    expect(((told[10] ?? 0) - start) / (end - start)).toBeCloseTo(1 - Math.exp(-1), 1);
  });

  test('of a chip tells whole kelvins, every ten seconds', () => {
    const told = series('chipTemperature', (second) => 50 + second / 7, 200);
    expect(told.every(Number.isInteger)).toBe(true);
    let changes = 0;
    for (let i = 1; i < told.length; i += 1) if (told[i] !== told[i - 1]) changes += 1;
    expect(changes).toBeLessThanOrEqual(20);
    expect(changes).toBeGreaterThan(10);
  });

  test('in the exhaust is blind below 2 free L/min', () => {
    expect(series('exhaustFlow', () => 1.5 / 60000, 50).every((value) => value === 0)).toBe(true);
    expect(series('exhaustFlow', () => 4 / 60000, 50).every((value) => value > 0)).toBe(true);
  });

  test('of ultrasound repeats a value now and then', () => {
    const told = series('ultrasonicFlow', () => 0.0007, 20_000);
    const repeats = told.filter((value, index) => index > 0 && value === told[index - 1]).length;
    expect(repeats).toBeGreaterThan(5);
    expect(repeats).toBeLessThan(50);
  });

  test('that a controller knows of itself tells the truth', () => {
    expect(series('exact', () => 0.947, 3)).toEqual([0.947, 0.947, 0.947]);
  });
});

test('the same seed gives the same sensors and the same noise, another one does not', () => {
  const once = series('pressure', () => 1, 100, 5);
  expect(series('pressure', () => 1, 100, 5)).toEqual(once);
  expect(series('pressure', () => 1, 100, 6)).not.toEqual(once);
});

test('every point has the sensor that its quantity needs', () => {
  expect(sensorKindOf('branch.r5.flow', 'ultrasonicFlow')).toBe('ultrasonicFlow');
  expect(sensorKindOf('branch.r5.flow', 'electromagneticFlow')).toBe('electromagneticFlow');
  expect(sensorKindOf('plate.r1a.temperature', 'ultrasonicFlow')).toBe('chipTemperature');
  expect(sensorKindOf('branch.r1.return.pressure', 'ultrasonicFlow')).toBe('pressure');
  expect(sensorKindOf('pump.running', 'ultrasonicFlow')).toBe('exact');
});
