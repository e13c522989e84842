import { describe, expect, it } from 'vitest';
import type { Commissioned } from '../../../../../../backend/src/evaluation/site/compiled-site';
import { designNotStated } from '../../../../../../backend/src/evaluation/site/design-not-stated';
import { RuleBench } from '../rule-bench';

const day = 24;
const commissioned: Commissioned = { ...designNotStated.commissioned, pumpEfficiency: 0.45 };

describe('FIL-1', () => {
  const filter = (): RuleBench =>
    new RuleBench({
      also: ['filterResistance', 'filterTimeToLimit', 'filter.pressureDrop'],
      values: { filterResistance: 1, filterTimeToLimit: Number.NaN, 'filter.pressureDrop': 15_000 },
    })
      .bad('filterTimeToLimit')
      .hours(1);

  it('is an alert once the mean of ten minutes is above twice clean, and goes a fifth below', () => {
    const bench = filter().set('filterResistance', 2.1);
    expect(bench.run(300).active('FIL-1')).toBe(false);
    expect(bench.run(400).alert('FIL-1')).toMatchObject({ limit: 2, unitOfMeasure: '1' });
    expect(bench.alarm('FIL-1')).toBeUndefined();
    expect(bench.alert('FIL-1')?.detail).toBe('Filter 2.1 times clean.');
    expect(bench.set('filterResistance', 1.85).run(900).active('FIL-1')).toBe(true);
    expect(bench.set('filterResistance', 1).run(1300).active('FIL-1')).toBe(false);
  });

  it('tells a filter that will be full within three days, long before it is at twice clean', () => {
    const bench = filter()
      .set('filterResistance', 1.3)
      .set('filterTimeToLimit', 40 * 3600)
      .run(1200);
    // A straight line: 0.7 more in 40 h, and one more in 57 h after that; 10800 s have passed.
    expect(bench.alert('FIL-1')?.detail).toMatch(
      /^Filter 1\.3 times clean\. If it goes on so: 2 times clean at 2026-03-\d\d \d\d:\d\d UTC, 3 times at /,
    );
  });

  it('is not raised by a trend of a clean filter, nor by one that has four days left', () => {
    expect(filter().set('filterTimeToLimit', 86_400).run(1200).active('FIL-1')).toBe(false);
    const slow = filter()
      .set('filterResistance', 1.3)
      .set('filterTimeToLimit', 4 * 86_400);
    expect(slow.run(1200).active('FIL-1')).toBe(false);
  });

  it('holds while the resistance is not known, and is off when stopped', () => {
    const bench = filter().set('filterResistance', 2.5).run(1200);
    expect(bench.bad('filterResistance').run(3000).active('FIL-1')).toBe(true);
    expect(filter().mode('filling').set('filterResistance', 4).run(1200).active('FIL-1')).toBe(false);
  });
});

describe('FIL-2', () => {
  const filter = (filterRatingPa: number | null = null): RuleBench =>
    new RuleBench({
      also: ['filterResistance', 'filter.pressureDrop', 'timeToEmpty'],
      design: { filterRatingPa },
      values: { filterResistance: 1, 'filter.pressureDrop': 15_000 },
    }).hours(1);

  it('is raised above three times clean as priority 3 and hides FIL-1', () => {
    const bench = filter().set('filterResistance', 3.2).run(1200);
    expect(bench.alarm('FIL-2')).toMatchObject({ priority: 3, limit: 3, unitOfMeasure: '1' });
    expect(bench.alert('FIL-1')).toBeUndefined();
    expect(bench.set('filterResistance', 1).run(1300).active('FIL-2')).toBe(false);
  });

  it('is raised at four fifths of the element’s rating, and shows that', () => {
    const bench = filter(60_000).set('filter.pressureDrop', 47_000).run(1200);
    expect(bench.active('FIL-2')).toBe(false);
    bench.set('filter.pressureDrop', 49_000).set('timeToEmpty', 300).run(1200);
    expect(bench.alarm('FIL-2')).toMatchObject({ limit: 48_000, unitOfMeasure: 'Pa' });
    expect(bench.detail('FIL-2')).toMatch(/empty in 5 min/);
  });

  it('holds on a bad sensor', () => {
    const bench = filter(60_000).set('filter.pressureDrop', 50_000).run(1200);
    bench.bad('filter.pressureDrop').bad('filterResistance').run(3600);
    expect(bench.active('FIL-2')).toBe(true);
  });
});

describe('PUMP-3', () => {
  const pump = (): RuleBench =>
    new RuleBench({ also: ['pumpEfficiency'], design: { commissioned }, values: { pumpEfficiency: 0.45 } });

  it('is an alert where the mean of a day is ten points below commissioning', () => {
    const bench = pump().set('pumpEfficiency', 0.34).hours(11);
    expect(bench.active('PUMP-3')).toBe(false);
    expect(bench.hours(2).alert('PUMP-3')).toMatchObject({ limit: 0.45 - 0.1 });
    expect(
      bench
        .set('pumpEfficiency', 0.45)
        .hours(day + 1)
        .active('PUMP-3'),
    ).toBe(false);
  });

  it('is not raised by an hour, nor by nine points, nor by what the pump does far from rated flow', () => {
    const bench = pump().hours(day);
    expect(bench.set('pumpEfficiency', 0.1).hours(1).set('pumpEfficiency', 0.45).hours(2).active('PUMP-3')).toBe(false);
    expect(
      pump()
        .set('pumpEfficiency', 0.36)
        .hours(2 * day)
        .active('PUMP-3'),
    ).toBe(false);
    const slow = pump()
      .set('loop.flow', 200 / 60_000)
      .set('pumpEfficiency', 0.2)
      .hours(2 * day);
    expect(slow.active('PUMP-3')).toBe(false);
  });
});

describe('HX-1', () => {
  const exchanger = (): RuleBench =>
    new RuleBench({
      also: ['uaRatio', 'valve.command', 'heatRemoved'],
      design: { facilityDesignSupplyC: 32 },
      values: { uaRatio: 1, 'valve.command': 0.5, heatRemoved: 208_000 },
    });

  it('is an alert where the mean of a day is below three quarters of clean, though the valve holds the supply', () => {
    const bench = exchanger().set('uaRatio', 0.72).hours(13);
    expect(bench.alert('HX-1')).toMatchObject({ limit: 0.75 });
    expect(bench.alert('HX-1')?.detail).toBe(
      'Mean of a day: UA 72 % of clean at the same flows, valve 50 % open at usual load.',
    );
    expect(
      bench
        .set('uaRatio', 1)
        .hours(day + 1)
        .active('HX-1'),
    ).toBe(false);
  });

  it('is raised by a valve that stands open at usual load, where UA is not known', () => {
    const bench = new RuleBench({
      also: ['valve.command', 'heatRemoved'],
      without: ['uaRatio', 'pump.inlet.pressure', 'supply.pressure', 'return.pressure'],
      values: { 'valve.command': 0.97, heatRemoved: 200_000 },
    }).hours(13);
    expect(bench.alert('HX-1')).toMatchObject({ limit: 0.95 });
  });

  it('is not raised by an open valve at low load or with warm facility water', () => {
    const low = exchanger().set('valve.command', 1).set('heatRemoved', 60_000).hours(day);
    expect(low.active('HX-1')).toBe(false);
    const warm = exchanger().set('valve.command', 1).set('facility.supply.temperature', 33).hours(day);
    expect(warm.active('HX-1')).toBe(false);
  });

  it('is off when stopped', () => {
    expect(exchanger().mode('off').set('uaRatio', 0.5).hours(day).active('HX-1')).toBe(false);
  });
});

describe('RTH-1', () => {
  const plates = [
    { id: 'p1', branch: 0, elevationM: null },
    { id: 'p2', branch: 1, elevationM: null },
  ];
  const ratio = (id: string): string => `plate.${id}.resistanceRatio`;
  const bench = (): RuleBench =>
    new RuleBench({
      plates,
      also: [ratio('p1'), ratio('p2')],
      values: { [ratio('p1')]: 1, [ratio('p2')]: 1 },
    }).run(60);

  it('is an alert for the plate that shows it, an hour after its mean has passed', () => {
    const one = bench().set(ratio('p2'), 1.4).run(3600, undefined, 10);
    expect(one.active('RTH-1')).toBe(false);
    one.run(1200, undefined, 10);
    expect(one.alert('RTH-1')).toMatchObject({ alert: 'm1:RTH-1:p2', where: 'Plate p2', limit: 1.25 });
    one.set(ratio('p2'), 1).run(7200, undefined, 10);
    expect(one.active('RTH-1')).toBe(false);
  });

  it('is not raised by whole kelvins of a chip sensor: ±2 % of 24 K about a sound plate', () => {
    const one = bench();
    one.run(7200, (second) => one.set(ratio('p1'), 1.2 + (second % 2 === 0 ? 0.04 : -0.04)));
    expect(one.active('RTH-1')).toBe(false);
  });

  it('holds where the ratio is not known', () => {
    const one = bench().set(ratio('p1'), 1.6).run(7200, undefined, 10);
    expect(one.bad(ratio('p1')).run(9000, undefined, 10).active('RTH-1')).toBe(true);
  });
});

describe('BAL-1', () => {
  const balance = (): RuleBench =>
    new RuleBench({ also: ['heatBalanceSignificance'], values: { heatBalanceSignificance: 0.4 } }).run(30);

  it.each([3.2, -3.2])('is an alert a quarter of an hour after z is %s', (z) => {
    const bench = balance().set('heatBalanceSignificance', z);
    expect(bench.run(890, undefined, 10).active('BAL-1')).toBe(false);
    expect(bench.run(20, undefined, 10).alert('BAL-1')).toMatchObject({ limit: 3, value: z });
    expect(bench.set('heatBalanceSignificance', 0).run(920, undefined, 10).active('BAL-1')).toBe(false);
  });

  it('takes no input of uncertain quality', () => {
    const bench = balance().set('heatBalanceSignificance', 9).uncertain('heatBalanceSignificance');
    expect(bench.run(3600, undefined, 10).active('BAL-1')).toBe(false);
  });

  it.each(['off', 'starting'] as const)('is off in mode %s', (mode) => {
    const bench = balance().mode(mode).set('heatBalanceSignificance', 9);
    expect(bench.run(3600, undefined, 10).active('BAL-1')).toBe(false);
  });
});

describe('CHEM', () => {
  /** Entry, point, sound value, one outside, back, and the limits that a site gives where the catalogue has none. */
  const cases = [
    ['CHEM-1', 'conductivity25', 0.01, 0.05, 0.01, { low: 0.005, limit: 0.02 }],
    ['CHEM-1', 'conductivity25', 0.01, 0.004, 0.01, { low: 0.005, limit: 0.02 }],
    ['CHEM-2', 'ph', 8.8, 9.7, 9.3, {}],
    ['CHEM-2', 'ph', 8.8, 7.9, 8.2, {}],
    ['CHEM-3', 'water.bacteria', 10, 1000, 50, {}],
    ['CHEM-4', 'water.copper', 0.0001, 0.0003, 0.0001, {}],
    ['CHEM-4', 'water.inhibitor', 0.4, 0.1, 0.4, { low: 0.2 }],
    ['CHEM-5', 'water.turbidity', 2, 30, 10, {}],
  ] as const;

  it.each(cases)(
    '%s is an alert ten minutes after %s went from %s to %s',
    (entry, point, sound, outside, back, limits) => {
      const bench = new RuleBench({ also: [point], limits: new Map([[entry, limits]]), values: { [point]: sound } });
      expect(bench.run(3600, undefined, 10).active(entry)).toBe(false);
      expect(bench.set(point, outside).run(600, undefined, 10).active(entry)).toBe(false);
      expect(bench.run(20, undefined, 10).alert(entry)).toMatchObject({ entry, value: outside });
      expect(bench.bad(point).run(1800, undefined, 10).active(entry)).toBe(true);
      expect(bench.set(point, back).run(630, undefined, 10).active(entry)).toBe(false);
    },
  );

  it('never judges conductivity or inhibitor by itself: their bands are the site’s', () => {
    const bench = new RuleBench({
      also: ['conductivity25', 'water.inhibitor'],
      values: { conductivity25: 5, 'water.inhibitor': 0 },
    });
    expect(bench.run(3600, undefined, 10).all()).toEqual([]);
  });
});
