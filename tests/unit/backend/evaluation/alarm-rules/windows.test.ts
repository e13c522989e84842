import { describe, expect, it } from 'vitest';
import { NoiseTable } from '../../../../../backend/src/evaluation/alarm-rules/noise';
import { createRiseMemory, followRise, riseRate } from '../../../../../backend/src/evaluation/alarm-rules/rise-rate';
import { SecondRings } from '../../../../../backend/src/evaluation/alarm-rules/second-rings';
import { slopeChange, stepOf, stepRingLength } from '../../../../../backend/src/evaluation/alarm-rules/step';
import { seeded } from '../pipeline/sensor-noise';

describe('rings of seconds', () => {
  it('are read by age, each signal on its own', () => {
    const rings = new SecondRings(2, 4);
    for (let i = 1; i <= 6; i += 1) rings.push(1, i);
    expect([0, 1, 2, 3].map((age) => rings.at(1, age))).toEqual([6, 5, 4, 3]);
    expect(rings.at(0, 0)).toBeNaN();
    expect(rings.mean(1, 1, 3)).toBe(4);
  });

  it('know nothing after they forgot, and of a mean with a gap in it', () => {
    const rings = new SecondRings(2, 4);
    for (let i = 0; i < 4; i += 1) rings.push(0, 1);
    rings.push(0, Number.NaN);
    expect(rings.mean(0, 0, 1)).toBeNaN();
    rings.forget(0, 1);
    expect(rings.mean(0, 2, 3)).toBeNaN();
  });
});

describe('a step', () => {
  const stepAfter = (values: readonly number[]): number => {
    const rings = new SecondRings(1, stepRingLength);
    for (const value of values) rings.push(0, value);
    return stepOf(rings, 0);
  };

  it('is counted in full once its window lies across it, from the second tick on', () => {
    expect(stepAfter([0, 0, 0, 0, 0, 0, 0, 10])).toBe(5);
    expect(stepAfter([0, 0, 0, 0, 0, 0, 10, 10])).toBe(10);
    expect(stepAfter([0, 0, 0, 10, 10, 10, 10, 10])).toBe(10);
  });

  it('is gone when the window has passed it', () => {
    expect(stepAfter([10, 10, 10, 10, 10, 10, 10, 10])).toBe(0);
  });

  it('is not known before eight ticks', () => {
    expect(stepAfter([0, 0, 0, 0, 0, 10, 10])).toBeNaN();
  });
});

describe('a change of slope', () => {
  it('is the slope of the newest five ticks less that of the seven before', () => {
    const rings = new SecondRings(1, stepRingLength);
    for (const value of [0, 1, 2, 3, 4, 5, 6, 10, 13, 16, 19, 22]) rings.push(0, value);
    expect(slopeChange(rings, 0)).toBeCloseTo(2, 12);
  });

  it('is not known before twelve ticks', () => {
    const rings = new SecondRings(1, stepRingLength);
    for (let i = 0; i < 11; i += 1) rings.push(0, i);
    expect(slopeChange(rings, 0)).toBeNaN();
  });
});

describe('a rate of rise', () => {
  const following = (seconds: number, temperature: (second: number) => number) => {
    const memory = createRiseMemory(1);
    for (let second = 0; second < seconds; second += 1) followRise(memory, 0, temperature(second));
    return memory;
  };

  it('is that of a straight line', () => {
    expect(
      riseRate(
        following(23, (second) => 5 + 0.03 * second),
        0,
        1000,
      ),
    ).toBeCloseTo(0.03, 12);
  });

  it('is not known until the window is full: twenty seconds, or three periods of a slow source', () => {
    const line = (second: number): number => 5 + 0.03 * second;
    expect(riseRate(following(22, line), 0, 1000)).toBeNaN();
    expect(riseRate(following(182, line), 0, 60_000)).toBeNaN();
    expect(riseRate(following(183, line), 0, 60_000)).toBeCloseTo(0.03, 12);
    expect(riseRate(following(183, line), 0, 61_000)).toBeNaN();
  });

  it('is below 2 K/min after one step of a whole-degree source, and above it after three in a minute', () => {
    const steps = (second: number): number => 36 + Math.floor(second / 30);
    expect(
      riseRate(
        following(70, (second) => 36 + Math.floor(second / 34)),
        0,
        1000,
      ),
    ).toBeLessThanOrEqual(2 / 60);
    expect(
      riseRate(
        following(200, (second) => steps(1.5 * second)),
        0,
        1000,
      ),
    ).toBeGreaterThan(2 / 60);
  });

  it('is not dulled by one jump of a fine source', () => {
    const fine = (second: number): number => (second < 40 ? 36 : 39) + 0.01 * (second % 2);
    expect(riseRate(following(60, fine), 0, 1000)).toBeCloseTo(3 / 20, 2);
  });
});

describe('learnt noise', () => {
  it('is the standard deviation of one sample, within a quarter', () => {
    const noise = new NoiseTable(1);
    const random = seeded(1);
    const gauss = (): number => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
    let before = 3 * gauss();
    for (let i = 0; i < 600; i += 1) {
      const value = 3 * gauss();
      noise.learn(0, value - before);
      before = value;
    }
    expect(noise.deviation(0)).toBeGreaterThan(0.75 * 3);
    expect(noise.deviation(0)).toBeLessThan(1.25 * 3);
  });

  it('is hardly moved by the one step that is looked for', () => {
    const noise = new NoiseTable(1);
    for (let i = 0; i < 100; i += 1) noise.learn(0, i % 2 === 0 ? 1 : -1);
    const quiet = noise.deviation(0);
    noise.learn(0, 1000);
    expect(noise.deviation(0)).toBeLessThan(1.1 * quiet);
  });

  it('takes no notice of gaps', () => {
    const noise = new NoiseTable(1);
    noise.learn(0, Number.NaN);
    expect(noise.deviation(0)).toBe(0);
  });
});
