import { describe, expect, it } from 'vitest';
import { RuleBench } from '../rule-bench';

const litresPerMin = 1 / 60_000;

/** The pumps have changed over: the lead is ordered to rest, and the standby carries the loop. No mode point, no power of chips. */
function onStandby(): RuleBench {
  return new RuleBench({
    modeInferred: true,
    without: ['pump.inlet.pressure', 'supply.pressure', 'return.pressure', 'branch.r1.power', 'branch.r2.power'],
    also: ['pump.command', 'pump.standby.running', 'facility.flow'],
    design: { supplyClassLimitC: 45 },
    values: {
      ...{ 'pump.command': 0, 'pump.running': 0, 'pump.standby.running': 1, 'vacuum.running': 1 },
      'facility.flow': 340 * litresPerMin,
    },
  }).run(600);
}
/** Facility water is lost, and the supply warms up by a kelvin every five seconds. */
const facilityLost = (bench: RuleBench): RuleBench =>
  bench.set('facility.flow', 0).run(120, (second) => bench.set('supply.temperature', Math.min(55, 36 + second / 5)));

describe('a loop that the standby pump carries, without a mode point', () => {
  it('is cooled no less than by the lead: a lost facility, a warm supply and a lost flow are told', () => {
    const bench = facilityLost(onStandby());
    expect(bench.all()).toEqual(expect.arrayContaining(['FAC-1', 'TSUP-1', 'TSUP-2']));
    expect(bench.set('loop.flow', 0).run(10).active('FLOW-2')).toBe(true);
  });

  it('keeps what stands, and tells nothing new, while nothing is heard of the standby pump', () => {
    const bench = facilityLost(onStandby()).bad('pump.standby.running');
    bench.run(600);
    expect(bench.all()).toEqual(expect.arrayContaining(['FAC-1', 'TSUP-2']));
    expect(facilityLost(onStandby().bad('pump.standby.running')).active('FAC-1')).toBe(false);
  });

  it('stands as it was meant to where both pumps rest and the lead is ordered to', () => {
    const bench = onStandby().set('pump.standby.running', 0).run(60);
    expect(facilityLost(bench).active('FAC-1')).toBe(false);
  });
});
