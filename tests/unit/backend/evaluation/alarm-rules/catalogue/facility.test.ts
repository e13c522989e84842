import { describe, expect, it } from 'vitest';
import { RuleBench, type BenchOptions } from '../rule-bench';

const litres = (perMinute: number): number => perMinute / 60_000;

const points = ['facility.flow', 'valve.command', 'valve.position', 'facility.return.temperature'];
const withMeter = (options: BenchOptions = {}): RuleBench =>
  new RuleBench({
    also: [...points, 'rideThroughFlow', 'rideThroughPlate', 'temperatureOnFans'],
    ...options,
    values: {
      'facility.flow': litres(340),
      'valve.command': 0.5,
      'valve.position': 0.5,
      'facility.return.temperature': 39,
      ...options.values,
    },
  }).run(700);

describe('FAC-1 by a meter', () => {
  it('is raised within five seconds of a trip, through the lag of a magnetic meter of 2 s', () => {
    const bench = withMeter();
    let seconds = 0;
    // First-order lag: after t seconds exp(−t/2) of the flow is still shown.
    while (!bench.active('FAC-1') && seconds < 20) {
      seconds += 1;
      bench.set('facility.flow', litres(340) * Math.exp(-seconds / 2)).run(1);
    }
    expect(seconds).toBeLessThanOrEqual(5);
    expect(bench.alarm('FAC-1')).toMatchObject({ priority: 1 });
  });

  it('shows the three clocks', () => {
    const bench = withMeter().set('rideThroughFlow', 14).set('rideThroughPlate', 31).set('temperatureOnFans', 77);
    bench.set('facility.flow', 0).run(5);
    expect(bench.detail('FAC-1')).toBe(
      'If the loop’s flow stopped now: stored water 14 s; plates to their limit 31 s; chips on fans alone at 77 °C.',
    );
  });

  it('stays for as long as the flow is lost, however long, and clears 10 s after it is back', () => {
    const bench = withMeter().set('facility.flow', 0).run(3600);
    expect(bench.active('FAC-1')).toBe(true);
    bench.set('facility.flow', litres(300));
    expect(bench.secondsUntilGone('FAC-1', 30)).toBe(11);
  });

  it('is not raised by a valve that closes as the load goes down, nor by one that is shut', () => {
    const bench = withMeter();
    bench.run(60, (second) => {
      const lift = 0.5 - (0.35 * second) / 60;
      bench.set('valve.command', lift).set('facility.flow', litres(340) * (lift / 0.5));
    });
    expect(bench.active('FAC-1')).toBe(false);
    expect(bench.set('valve.command', 0).set('facility.flow', 0).run(60).active('FAC-1')).toBe(false);
  });

  it('is not raised by noise of one per cent, nor by a flow that falls by a third', () => {
    const bench = withMeter();
    bench.run(300, (second) => bench.set('facility.flow', litres(340) * (1 + 0.01 * Math.sin(second))));
    expect(bench.set('facility.flow', litres(225)).run(120).active('FAC-1')).toBe(false);
  });

  it('holds on a meter that is bad', () => {
    const bench = withMeter().bad('facility.flow').run(60);
    expect(bench.active('FAC-1')).toBe(false);
    bench.set('facility.flow', 0).run(5);
    expect(bench.bad('facility.flow').run(60).active('FAC-1')).toBe(true);
  });

  it('is raised by a flow that ebbs away within an hour: the mean of ten minutes follows it, that of the day does not', () => {
    const bench = withMeter().hours(3, 30);
    let raisedAt = Number.NaN;
    bench.run(3600, (second) => {
      bench.set('facility.flow', litres(340) * (1 - (0.75 * second) / 3600));
      if (Number.isNaN(raisedAt) && bench.active('FAC-1')) raisedAt = second;
    });
    // A half of what flowed before is reached after 40 minutes.
    expect(raisedAt).toBeGreaterThan(2300);
    expect(raisedAt).toBeLessThan(2700);
  });

  it('is not raised by the same where the valve closes as the load goes, nor where no valve tells', () => {
    const closes = withMeter().hours(3, 30);
    closes.run(3600, (second) => {
      const lift = 0.5 * (1 - (0.75 * second) / 3600);
      closes.set('valve.command', lift).set('facility.flow', litres(340) * (lift / 0.5));
    });
    expect(closes.active('FAC-1')).toBe(false);
    const blind = new RuleBench({ also: ['facility.flow'], values: { 'facility.flow': litres(340) } }).hours(3, 30);
    blind.run(3600, (second) => blind.set('facility.flow', litres(340) * (1 - (0.75 * second) / 3600)));
    expect(blind.active('FAC-1')).toBe(false);
  });

  it('goes by commissioning where it has not watched for long', () => {
    const bench = new RuleBench({ also: points, values: { 'facility.flow': 0, 'valve.command': 0.5 } });
    expect(bench.secondsUntil('FAC-1', 10)).toBe(3);
    const low = new RuleBench({ also: points, values: { 'facility.flow': litres(100), 'valve.command': 0.2 } });
    expect(low.run(60).active('FAC-1')).toBe(false);
  });

  it.each(['off', 'filling', 'standby'] as const)('is off in mode %s', (mode) => {
    expect(withMeter().mode(mode).set('facility.flow', 0).run(30).active('FAC-1')).toBe(false);
  });

  it('folds the warm supply that follows', () => {
    const bench = withMeter({ design: { supplyClassLimitC: 45 } })
      .set('facility.flow', 0)
      .run(5);
    bench.set('supply.temperature', 46).run(15);
    for (const entry of ['TSUP-1', 'TSUP-2']) expect(bench.alarm(entry)?.foldedUnder).toBe('m1:FAC-1');
  });
});

describe('FAC-1 without a meter', () => {
  const without = (): RuleBench =>
    new RuleBench({ also: ['facility.return.temperature'], values: { 'facility.return.temperature': 39 } }).run(60);

  it('is raised where the facility’s outlet meets the loop’s return and the supply runs away', () => {
    const bench = without().set('facility.return.temperature', 44.5);
    bench.run(40, (second) => bench.set('supply.temperature', 36.3 + 0.1 * second));
    expect(bench.alarm('FAC-1')).toMatchObject({ priority: 1, unitOfMeasure: 'Cel' });
  });

  it('is not raised by little flow at low load: the outlet meets the return, but the supply holds', () => {
    expect(without().set('facility.return.temperature', 44.8).run(300).active('FAC-1')).toBe(false);
  });

  it('is not raised by warm facility water, which takes supply and outlet with it', () => {
    const bench = without();
    let raised = false;
    bench.run(120, (second) => {
      const warmer = Math.min(8, 0.1 * second);
      bench.set('facility.supply.temperature', 30 + warmer).set('supply.temperature', 36.3 + warmer);
      bench.set('facility.return.temperature', Math.min(44.5, 41 + warmer));
      raised ||= bench.active('FAC-1');
    });
    expect(raised).toBe(false);
  });

  it('is not raised by a supply that warms while the outlet stays cool', () => {
    const bench = without();
    bench.run(40, (second) => bench.set('supply.temperature', 36.3 + 0.1 * second));
    expect(bench.active('FAC-1')).toBe(false);
  });
});

describe('FAC-2', () => {
  const bench = (): RuleBench => new RuleBench({ design: { facilityDesignSupplyC: 30 } }).run(5);

  it('is raised a minute after the facility water is above its design, as priority 2, and clears half a kelvin lower', () => {
    const warm = bench().set('facility.supply.temperature', 30.1);
    expect(warm.secondsUntil('FAC-2', 90)).toBe(61);
    expect(warm.alarm('FAC-2')).toMatchObject({ priority: 2, limit: 30 });
    expect(warm.set('facility.supply.temperature', 29.6).run(120).active('FAC-2')).toBe(true);
    warm.set('facility.supply.temperature', 29.5);
    expect(warm.secondsUntilGone('FAC-2', 90)).toBe(61);
  });

  it('holds on a bad sensor, is off when stopped, and is not there without a design figure', () => {
    expect(bench().bad('facility.supply.temperature').run(120).active('FAC-2')).toBe(false);
    expect(bench().mode('off').set('facility.supply.temperature', 35).run(120).active('FAC-2')).toBe(false);
    expect(new RuleBench().set('facility.supply.temperature', 60).run(120).active('FAC-2')).toBe(false);
  });
});

describe('TSUP-2', () => {
  const bench = (): RuleBench => new RuleBench({ design: { supplyClassLimitC: 45 } }).run(5);

  it('is raised 10 s after the supply is at its class, less the uncertainty of its sensor, as priority 1', () => {
    const warm = bench();
    warm.pipeline.state.expandedUncertainty[warm.pipeline.unitSlots[0]?.supplyTemperature ?? -1] = 0.4;
    warm.set('supply.temperature', 44.5).run(60);
    expect(warm.active('TSUP-2')).toBe(false);
    warm.set('supply.temperature', 44.7);
    expect(warm.secondsUntil('TSUP-2', 20)).toBe(11);
    expect(warm.alarm('TSUP-2')).toMatchObject({ priority: 1, limit: 44.6 });
    warm.set('supply.temperature', 44);
    expect(warm.secondsUntilGone('TSUP-2', 60)).toBe(31);
  });

  it('hides the lower step, TSUP-1', () => {
    const warm = bench().set('supply.temperature', 46).run(15);
    expect(warm.alarm('TSUP-1')?.foldedUnder).toBe('m1:TSUP-2');
  });

  it('holds on a bad sensor and is off when stopped', () => {
    const warm = bench().set('supply.temperature', 46).run(15);
    expect(warm.bad('supply.temperature').run(120).active('TSUP-2')).toBe(true);
    expect(bench().mode('standby').set('supply.temperature', 60).run(60).active('TSUP-2')).toBe(false);
  });
});

describe('VALVE-1', () => {
  const bench = (): RuleBench =>
    new RuleBench({ also: points, values: { 'valve.command': 0.5, 'valve.position': 0.5 } }).run(60);

  it('is raised 30 s after a stuck valve is told to stand elsewhere, and says both', () => {
    const stuck = bench().set('valve.command', 0.64);
    expect(stuck.secondsUntil('VALVE-1', 60)).toBe(31);
    expect(stuck.alarm('VALVE-1')).toMatchObject({ priority: 3, value: 0.5, limit: 0.64 });
    expect(stuck.detail('VALVE-1')).toBe('Told 64 %, stands at 50 %.');
    stuck.set('valve.position', 0.64);
    expect(stuck.secondsUntilGone('VALVE-1', 30)).toBe(11);
  });

  it('is not raised by a sound valve on its way through a whole stroke of 100 s', () => {
    const sound = bench().set('valve.position', 0).set('valve.command', 1);
    sound.run(120, (second) => sound.set('valve.position', Math.min(1, second / 100)));
    expect(sound.active('VALVE-1')).toBe(false);
  });

  it('is raised where it sticks half way', () => {
    const sticks = bench().set('valve.command', 1);
    sticks.run(90, (second) => sticks.set('valve.position', Math.min(0.7, 0.5 + second / 100)));
    expect(sticks.active('VALVE-1')).toBe(true);
  });

  it('is not raised by 4 % of difference, and holds on bad feedback', () => {
    expect(bench().set('valve.command', 0.54).run(120).active('VALVE-1')).toBe(false);
    expect(bench().set('valve.command', 0.9).bad('valve.position').run(120).active('VALVE-1')).toBe(false);
  });
});

describe('DEW-2', () => {
  const bench = (): RuleBench => new RuleBench({ also: ['dewPointMargin'], values: { dewPointMargin: 6 } }).run(5);

  it('is raised 30 s after the coldest surface is within half a kelvin, as priority 2, and hides DEW-1', () => {
    const damp = bench().set('dewPointMargin', 0.4);
    expect(damp.secondsUntil('DEW-2', 60)).toBe(31);
    expect(damp.alarm('DEW-2')).toMatchObject({ priority: 2, limit: 0.5 });
    expect(damp.run(120).alarm('DEW-1')?.foldedUnder).toBe('m1:DEW-2');
    damp.set('dewPointMargin', 1);
    expect(damp.secondsUntilGone('DEW-2', 90)).toBe(61);
  });

  it.each(['off', 'vented', 'standby', 'draining'] as const)('is never suppressed by mode: on in %s', (mode) => {
    expect(bench().mode(mode).set('dewPointMargin', 0).run(40).active('DEW-2')).toBe(true);
  });

  it('holds where the margin is not known', () => {
    expect(bench().bad('dewPointMargin').run(60).active('DEW-2')).toBe(false);
    expect(bench().set('dewPointMargin', 0).run(40).bad('dewPointMargin').run(90).active('DEW-2')).toBe(true);
  });
});

describe('TSUP-1 by its rise', () => {
  const withPeriod = (periodS: number): RuleBench => {
    const bench = new RuleBench({ design: { supplySetPointC: 60 }, values: { 'supply.temperature': 36 } });
    bench.pipeline.site.slots.periodMs[bench.pipeline.unitSlots[0]?.supplyTemperature ?? -1] = periodS * 1000;
    return bench.run(240);
  };
  /** A source that tells every so many seconds, in whole degrees. */
  const wholeDegrees = (kPerMin: number, everyS: number) => (bench: RuleBench) => (second: number) => {
    if (second % everyS === 0) bench.set('supply.temperature', Math.floor(36.3 + (kPerMin * second) / 60));
  };
  const raisedIn = (bench: RuleBench, seconds: number, tell: (second: number) => void): boolean => {
    let raised = false;
    bench.run(seconds, (second) => {
      tell(second);
      raised ||= bench.active('TSUP-1');
    });
    return raised || bench.active('TSUP-1');
  };

  it.each([
    [1, 1],
    [1, 10],
    [1, 60],
    [0.5, 1],
    [0.5, 60],
  ])('takes the steps of a whole-degree source for no rise: %f K/min, told every %i s', (kPerMin, everyS) => {
    const bench = withPeriod(everyS);
    expect(raisedIn(bench, 900, wholeDegrees(kPerMin, everyS)(bench))).toBe(false);
  });

  it.each([
    [4, 1, 90],
    [4, 60, 240],
  ])('tells a rise of %f K/min of such a source, told every %i s, within %i s', (kPerMin, everyS, within) => {
    const bench = withPeriod(everyS);
    expect(raisedIn(bench, within, wholeDegrees(kPerMin, everyS)(bench))).toBe(true);
  });

  it('does not judge the rise of a source that tells every two minutes', () => {
    const bench = withPeriod(120);
    expect(raisedIn(bench, 600, wholeDegrees(1.9, 120)(bench))).toBe(false);
  });

  it('goes on while its rate is not known, as right after a gap', () => {
    const bench = withPeriod(1);
    bench.run(60, (second) => bench.set('supply.temperature', 36.3 + second / 15));
    expect(bench.active('TSUP-1')).toBe(true);
    bench.bad('supply.temperature').run(100).set('supply.temperature', 41);
    expect(bench.run(15).active('TSUP-1')).toBe(true);
    expect(bench.run(100).active('TSUP-1')).toBe(false);
  });
});
