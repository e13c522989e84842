import { describe, expect, it } from 'vitest';
import { RuleBench } from '../rule-bench';

const lpm = 1 / 60_000;

/** Free air of so much water pushed aside, L/min: water flow × 32 kPa / 101.3 kPa (Boyle; gas and room equally warm within 10 %). */
const pushedAside = (freeLPerMin: number): number => ((freeLPerMin * 101.3) / 32) * lpm;

describe('AIR-1 by one signal alone', () => {
  const returnMeter = (): RuleBench =>
    new RuleBench({
      flowMeterSide: 'return',
      values: { 'loop.flow': 300 * lpm, 'branch.r1.flow': 150 * lpm, 'branch.r2.flow': 150 * lpm },
    })
      .bad('vacuum.speed')
      .bad('vacuum.exhaustFlow')
      .run(40);

  it('is raised within five seconds where more water comes back than goes out, by the worth of 30 free L/min', () => {
    const surge = returnMeter().set('loop.flow', 300 * lpm + pushedAside(30));
    const after = surge.secondsUntil('AIR-1', 10);
    expect(after).toBeGreaterThan(0);
    expect(after).toBeLessThanOrEqual(7);
  });

  it('is not raised where both flows rise together, nor by the worth of 10 free L/min', () => {
    const together = returnMeter();
    together
      .set('loop.flow', 360 * lpm)
      .set('branch.r1.flow', 180 * lpm)
      .set('branch.r2.flow', 180 * lpm);
    expect(together.run(20).active('AIR-1')).toBe(false);
    expect(
      returnMeter()
        .set('loop.flow', 300 * lpm + pushedAside(10))
        .run(20)
        .active('AIR-1'),
    ).toBe(false);
  });

  /** Moves 0.02 m³/s at every pressure: at 32 kPa less 7 kPa of vapour some 300 free L/min. */
  const vacuumSource = {
    count: 1,
    control: 'speed' as const,
    sealWaterC: null,
    pressurePa: [5000, 101_325],
    suctionM3PerS: [0.02, 0.02],
  };
  const bySpeed = (): RuleBench =>
    new RuleBench({ vacuumSource, values: { 'vacuum.speed': 0.2 } }).bad('vacuum.exhaustFlow').run(40);

  it('is raised by the speed of the vacuum source times its curve, and not while the pressure is drawn down', () => {
    expect(bySpeed().set('vacuum.speed', 0.35).run(8).active('AIR-1')).toBe(true);
    const down = bySpeed();
    down.run(12, (second) => void down.set('vacuum.speed', 0.35).set('separator.pressure', 32_000 - 100 * second));
    expect(down.active('AIR-1')).toBe(false);
  });

  it('has three times its limit while the loop is filled', () => {
    const filling = (): RuleBench =>
      new RuleBench({ also: ['gasLoad'], values: { gasLoad: 3 * lpm } }).mode('filling').run(40);
    // 3 × 20 = 60 free L/min
    expect(
      filling()
        .set('gasLoad', 53 * lpm)
        .run(20)
        .active('AIR-1'),
    ).toBe(false);
    expect(
      filling()
        .set('gasLoad', 73 * lpm)
        .run(20)
        .active('AIR-1'),
    ).toBe(true);
  });
});

describe('AIR-4 with a standby source', () => {
  const runUp = (available: number): RuleBench => {
    const plant = new RuleBench({
      also: ['vacuum.available', 'vacuum.standby.running'],
      values: {
        'vacuum.speed': 1,
        'vacuum.running': 1,
        'separator.pressure': 32_000,
        'vacuum.available': available,
        'vacuum.standby.running': 0,
      },
    }).run(30);
    return plant.run(10, (second) => void plant.set('separator.pressure', 32_000 + 1000 * (second + 1)));
  };

  it('counts one that stands and may still start as reserve, and one that could not as none', () => {
    expect(runUp(1).active('AIR-4')).toBe(false);
    expect(runUp(0).active('AIR-4')).toBe(true);
  });
});
