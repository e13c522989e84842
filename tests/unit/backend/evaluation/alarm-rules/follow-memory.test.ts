import { describe, expect, it } from 'vitest';
import { FollowMemory, type Following } from '../../../../../backend/src/evaluation/alarm-rules/follow-memory';

const into = (): Following => ({ minutes: 0, barometerPa: NaN, slope: NaN, correlation: NaN });

/** A barometer that falls by 233 Pa an hour, and what the sensor tells above the other one. */
function watched(hours: number, difference: (fallenPa: number, minute: number) => number): Following {
  const memory = new FollowMemory(2);
  for (let second = 0; second <= hours * 3600; second += 10) {
    const fallen = (233 * second) / 3600;
    memory.push(1, second * 1000, 100_000 - fallen, difference(fallen, Math.floor(second / 60)));
  }
  return memory.look(1, into());
}

describe('a line through barometer and sensor', () => {
  it('has the slope 1 where a sealed gauge has today’s barometer added', () => {
    const { correlation, slope } = watched(6, (fallen) => 6000 - fallen);
    expect(slope).toBeCloseTo(1, 6);
    expect(correlation).toBeCloseTo(1, 6);
  });

  it('has the slope −1 where the other one is the sealed gauge', () => {
    expect(watched(6, (fallen) => 6000 + fallen).slope).toBeCloseTo(-1, 6);
  });

  it('is no line where the sensor stands and is noisy', () => {
    const { correlation, slope } = watched(6, (_, minute) => 6000 + (minute % 2 === 0 ? 40 : -40));
    expect(Math.abs(slope)).toBeLessThan(0.05);
    expect(Math.abs(correlation)).toBeLessThan(0.1);
  });

  it('tells how much the barometer moved: a ramp of so many pascals deviates by their 1/√12 while nothing has faded', () => {
    expect(watched(1, () => 0).barometerPa).toBeCloseTo(233 / Math.sqrt(12), -1);
  });

  it('leaves out what is not known', () => {
    const memory = new FollowMemory(1);
    for (let minute = 0; minute < 300; minute += 1) memory.push(0, minute * 60_000, Number.NaN, 5000);
    expect(memory.look(0, into()).minutes).toBe(0);
  });
});
