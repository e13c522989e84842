import { describe, expect, it } from 'vitest';
import { RuleBench } from '../rule-bench';

const setPoints = ['separator.setPoint', 'supplyTank.setPoint'];
const cycleS = 50;

/** A change-over lifts the separator by 3.6 kPa within two seconds, sources full, and a quarter of a minute later it is down: common practice, no source. */
const changeOver = (second: number): number => {
  const s = second % cycleS;
  return s < 2 ? 1800 * (s + 1) : Math.max(0, 3600 - 300 * (s - 1));
};

function bench(): RuleBench {
  return new RuleBench({
    shape: 'b',
    also: setPoints,
    values: {
      ...{ 'separator.pressure': 31_000, 'separator.setPoint': 31_000 },
      ...{ 'supplyTank.pressure': 74_000, 'supplyTank.setPoint': 74_000, 'vacuum.speed': 1, 'vacuum.running': 1 },
    },
  });
}

/** A cut main, as gas flows into the receiver: 2.6 kPa a second. */
const cutMain = (one: RuleBench, from: number, seconds: number): RuleBench =>
  one.run(seconds, (second) => void one.set('separator.pressure', Math.min(101_000, from + 2600 * (second + 1))));
const cycles = (one: RuleBench, from: number, count: number): RuleBench =>
  one.run(count * cycleS, (second) => void one.set('separator.pressure', from + changeOver(second)));

describe('AIR-4 of alternating tanks', () => {
  it('is raised within a quarter of a minute of a cut main before any cycle was seen', () => {
    expect(cutMain(bench().run(15), 31_000, 15).active('AIR-4')).toBe(true);
  });

  it('stays until the pressure falls, though it stands at ambient, before any cycle was seen', () => {
    const one = cutMain(bench().run(15), 31_000, 45);
    expect(one.active('AIR-4')).toBe(true);
    one.run(40, (second) => void one.set('separator.pressure', 101_000 - 1500 * (second + 1)));
    expect(one.active('AIR-4')).toBe(false);
  });

  it('is not raised by the first change-over, nor by those that follow', () => {
    const one = bench().run(15);
    for (let cycle = 0; cycle < 4; cycle += 1) expect(cycles(one, 31_000, 1).active('AIR-4')).toBe(false);
  });

  it('takes a set point that people have raised for no opening, and an opening for one after it', () => {
    const one = cycles(bench(), 31_000, 4).set('separator.setPoint', 35_000);
    // The first change-over at the new set point tops all that was usual.
    for (let cycle = 0; cycle < 4; cycle += 1) {
      one.run(cycleS, (second) => {
        one.set('separator.pressure', 35_000 + changeOver(second));
        expect(one.active('AIR-4')).toBe(false);
      });
    }
    expect(cutMain(one, 35_000, 12).active('AIR-4')).toBe(true);
  });

  it('takes no set point that flickers, or goes down and up again, for one that people have raised', () => {
    const flickering = cycles(bench(), 31_000, 4);
    flickering.run(2 * cycleS, (second) => {
      flickering.set('separator.setPoint', 31_000 + (second % 2 === 0 ? 100 : 0));
      flickering.set('separator.pressure', 31_000 + changeOver(second));
    });
    const moved = cycles(bench(), 31_000, 4).set('separator.setPoint', 26_000);
    moved.run(10).set('separator.setPoint', 31_000);
    moved.run(10);
    // Four kilopascal above the highest of a change-over, where each flicker, or the way up, had lifted that by more.
    for (const one of [flickering, moved])
      expect(
        one.run(8, (second) => void one.set('separator.pressure', 33_000 + 800 * (second + 1))).active('AIR-4'),
      ).toBe(true);
  });

  it('stands, once raised, though a set point is raised or the supply tank is let down to the separator', () => {
    const one = cutMain(cycles(bench(), 31_000, 4), 31_000, 12);
    expect(one.active('AIR-4')).toBe(true);
    const at = 31_000 + 2600 * 12;
    one.set('separator.setPoint', 75_000);
    expect(one.run(20, () => void one.set('separator.pressure', at)).active('AIR-4')).toBe(true);
    one.set('supplyTank.pressure', at);
    expect(one.run(20, () => void one.set('separator.pressure', at)).active('AIR-4')).toBe(true);
  });

  it('is raised where the separator runs up past a supply tank that is below its set point', () => {
    const one = cycles(bench().set('supplyTank.setPoint', 90_000), 31_000, 4).set('supplyTank.pressure', 30_000);
    expect(cutMain(one, 36_000, 12).active('AIR-4')).toBe(true);
  });

  it('is not raised by gas that passes from tank to tank, and is by as much of an opening', () => {
    const rise = (supply: (second: number) => number): boolean => {
      const one = cycles(bench(), 31_000, 4);
      one.run(40, (second) => {
        one.set('separator.pressure', 33_600 + 200 * second);
        one.set('supplyTank.pressure', supply(second));
      });
      return one.active('AIR-4');
    };
    expect(rise((second) => 34_800 + 200 * second)).toBe(false);
    expect(rise(() => 74_000)).toBe(true);
  });

  describe('with a standby that starts', () => {
    /** 295 free L/min into 510 L (unit M of common practice) are 1.0 kPa a second, as gas of 40 °C. */
    const withStandby = (): RuleBench => {
      const one = new RuleBench({
        shape: 'b',
        also: [...setPoints, 'vacuum.standby.running', 'vacuum.available', 'vacuumCapacity'],
        values: {
          ...{ 'separator.pressure': 31_000, 'separator.setPoint': 31_000 },
          ...{ 'supplyTank.pressure': 74_000, 'supplyTank.setPoint': 74_000, 'vacuum.speed': 1, 'vacuum.running': 1 },
          ...{ 'vacuum.standby.running': 0, 'vacuum.available': 1, vacuumCapacity: 295 / 60_000 },
        },
        unit: (unit) => ({
          ...unit,
          design: { ...unit.design, volumes: { ...unit.design.volumes, separatorGasM3: 0.51 } },
        }),
      });
      return cycles(one, 31_000, 4);
    };
    /** A change-over on a source that no longer draws the tank down before it: higher than usual, then flat, and the standby starts. */
    const startsAfter = (one: RuleBench, after: (second: number) => number): RuleBench => {
      one.run(3, () => void one.set('separator.pressure', 36_100));
      return one.set('vacuum.standby.running', 1).run(30, (second) => {
        one.set('separator.pressure', after(second));
        if (one.active('AIR-4')) raisedS ??= second;
      });
    };
    let raisedS: number | undefined;

    it('asks for no load shed while it runs up and takes the pressure back', () => {
      raisedS = undefined;
      startsAfter(withStandby(), (second) => 36_100 - 150 * second);
      expect(raisedS).toBeUndefined();
    });

    it('is raised after its run-up where the pressure goes on rising', () => {
      raisedS = undefined;
      startsAfter(withStandby(), (second) => 36_100 + 150 * second);
      expect(raisedS).toBeGreaterThan(10);
      expect(raisedS).toBeLessThan(16);
    });

    it('waits for none that could not carry what comes in', () => {
      raisedS = undefined;
      startsAfter(withStandby(), (second) => 38_700 + 2600 * second);
      expect(raisedS).toBeLessThan(6);
    });
  });
});
