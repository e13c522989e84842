import { describe, expect, it } from 'vitest';
import { tightnessSummary } from '../../../../../../backend/src/evaluation/pipeline/tightness/summary';
import type { TightnessRecord } from '../../../../../../backend/src/evaluation/pipeline/tightness-record';
import { type Plant } from '../plant';
import { leak, lpm, plantAtRest, start, tightSite, vapourKpa } from './tightness-plant';

const newest = (plant: Plant): TightnessRecord => {
  const test = plant.pipeline.tightnessTests().at(-1);
  if (test === undefined) throw new Error('no test is known');
  return test;
};
const minutes = (count: number): object => ({ plannedMs: count * 60_000 });
/** Free L/min that were found, with the expanded uncertainty. */
const found = (plant: Plant) => {
  const { result } = newest(plant);
  return { value: (result?.freeAir ?? Number.NaN) / lpm, u: (result?.expandedUncertainty ?? Number.NaN) / lpm };
};

describe('a pressure-rise test of ten minutes', () => {
  it.each([
    [0.05, 'passes'],
    [0.15, 'notDecided'],
    [0.5, 'fails'],
  ] as const)('finds a leak of %d free L/min within its uncertainty: against 0.16 it %s', (freeLpm, verdict) => {
    const plant = plantAtRest();
    expect(start(plant, minutes(10)).ok).toBe(true);
    leak(plant, freeLpm, 602);
    const { value, u } = found(plant);
    expect(newest(plant)).toMatchObject({ endedFor: 'completed', steadiness: 'steady', verdict });
    expect(Math.abs(value - freeLpm)).toBeLessThan(u);
    expect(u).toBeLessThan(0.1);
    expect(tightnessSummary(newest(plant))).toMatch(
      /free L\/min .*Pa·m³\/s, dry gas up by \d\.\d\d kPa.*limit 0\.160 free L\/min/,
    );
  });

  it('takes out what warming makes of gas and vapour: a tight loop that warms by 0.6 K in ten minutes stays tight', () => {
    const plant = plantAtRest();
    start(plant, minutes(10));
    const dryKpa = 20 - vapourKpa;
    plant.run(602, (second) => {
      const t = 25 + second / 1000;
      plant.m1.tReturn = t;
      // Vapour pressure by Magnus (WMO-No. 8), another equation than the program's: they differ by a constant factor near 1.
      const vapour = 0.61121 * Math.exp((17.62 * t) / (243.12 + t));
      const vapourAtRest = 0.61121 * Math.exp((17.62 * 25) / (243.12 + 25));
      plant.m1.pSeparator = dryKpa * ((t + 273.15) / 298.15) + vapourKpa * (vapour / vapourAtRest);
    });
    const { value, u } = found(plant);
    expect(Math.abs(value)).toBeLessThan(u / 2);
    expect(Math.abs(value)).toBeLessThan(0.02);
  });

  it('follows the level: water that rises slowly squeezes the gas, which is no leak', () => {
    const plant = plantAtRest();
    start(plant, minutes(10));
    plant.run(602, (second) => {
      const rise = second * 0.00001;
      plant.m1.levelSeparator = 0.6 + rise;
      plant.m1.pSeparator = vapourKpa + ((20 - vapourKpa) * 0.51) / (0.51 - 0.25 * rise);
    });
    expect(newest(plant).verdict).toBe('passes');
    expect(Math.abs(found(plant).value)).toBeLessThan(0.005);
  });

  it('decides nothing where the rate falls, as of water that gives off its air', () => {
    const plant = plantAtRest();
    start(plant, minutes(10));
    plant.run(602, (second) => (plant.m1.pSeparator = 20 + 1.5 * (1 - Math.exp(-second / 150))));
    expect(newest(plant)).toMatchObject({ steadiness: 'falling', verdict: 'notDecided' });
    expect(tightnessSummary(newest(plant))).toContain('give off gas');
  });

  it('does not pass where the rate grows', () => {
    const plant = plantAtRest();
    start(plant, { ...minutes(10), acceptanceLimitM3PerS: 1 * lpm });
    plant.run(602, (second) => (plant.m1.pSeparator = 20 + 1.2 * (second / 600) ** 3));
    expect(newest(plant)).toMatchObject({ steadiness: 'growing', verdict: 'notDecided' });
  });

  it('decides nothing where gas goes out: its source was not shut off', () => {
    const plant = plantAtRest();
    start(plant, { ...minutes(10), sourceIsolated: true });
    plant.run(602, (second) => (plant.m1.pSeparator = 20 - second * 0.005));
    expect(newest(plant).verdict).toBe('notDecided');
    expect(tightnessSummary(newest(plant))).toContain('gas went out');
  });
});

describe('a pressure-rise test while it runs', () => {
  it('has no result for three minutes, then one that narrows', () => {
    const plant = plantAtRest();
    start(plant);
    leak(plant, 0.3, 170);
    expect(newest(plant)).toMatchObject({ result: null, steadiness: 'tooEarly', verdict: null });
    leak(plant, 0.3, 60);
    const early = found(plant);
    leak(plant, 0.3, 300);
    expect(found(plant).u).toBeLessThan(early.u);
    expect(newest(plant).verdict).toBeNull();
  });

  it('counts a second that brought nothing new not twice', () => {
    const plant = plantAtRest();
    start(plant);
    plant.run(10);
    plant.silent.add('m1').add('h');
    plant.run(5);
    plant.silent.delete('m1');
    plant.run(10);
    expect(newest(plant).samples).toBe(20);
  });

  it('is ended by a person with its verdict, once', () => {
    const plant = plantAtRest();
    start(plant);
    leak(plant, 0.5, 400);
    const end = {
      kind: 'endTightness',
      unit: 'm1',
      test: newest(plant).id,
      operator: 'Otto',
      station: 's',
      comment: '',
    } as const;
    expect(plant.pipeline.actOnTightness(end, plant.nowMs, () => false)).toMatchObject({ code: 'ACTION_NOT_RECORDED' });
    expect(newest(plant).endedFor).toBeNull();
    expect(plant.pipeline.actOnTightness(end, plant.nowMs).ok).toBe(true);
    expect(newest(plant)).toMatchObject({ endedFor: 'endedByPerson', endedBy: 'Otto', verdict: 'fails' });
    expect(plant.pipeline.actOnTightness(end, plant.nowMs)).toMatchObject({ code: 'TIGHTNESS_UNKNOWN' });
    expect(plant.pipeline.takeTightnessChanges()).toEqual([]);
  });

  it.each([
    ['sourceStarted', (plant: Plant): unknown => (plant.m1.vacuumRunning = true), 3],
    ['flowStarted', (plant: Plant): unknown => (plant.m1.flow = 100), 3],
    ['flowStarted', (plant: Plant): unknown => (plant.m1.pumpRunning = true), 3],
    ['levelJumped', (plant: Plant): unknown => (plant.m1.levelSeparator = 0.7), 62],
    ['inputBad', (plant: Plant): unknown => (plant.m1.tReturn = null), 50],
    ['inputBad', (plant: Plant): unknown => plant.silent.add('m1'), 50],
  ] as const)('is broken off as %s without a verdict, and tells the journal once', (endedFor, happen, withinS) => {
    const plant = plantAtRest();
    start(plant);
    leak(plant, 0.3, 240);
    happen(plant);
    plant.run(withinS);
    expect(newest(plant)).toMatchObject({ endedFor, endedBy: null, verdict: null });
    expect(plant.pipeline.takeTightnessChanges()).toMatchObject([{ what: 'ended', actor: null, test: { endedFor } }]);
    expect(plant.pipeline.takeTightnessChanges()).toEqual([]);
    expect(tightnessSummary(newest(plant))).toMatch(/^Broken off.*No verdict\.$/);
  });

  it('goes on over a reload that leaves its unit alone, and ends with one that changes what it measures', () => {
    const plant = plantAtRest();
    start(plant, minutes(10));
    leak(plant, 0.3, 300);
    plant.reload(tightSite());
    leak(plant, 0.3, 302);
    expect(newest(plant)).toMatchObject({ endedFor: 'completed', verdict: 'fails' });
    expect(Math.abs(found(plant).value - 0.3)).toBeLessThan(found(plant).u);

    start(plant, minutes(10));
    leak(plant, 0.3, 240);
    plant.reload(tightSite({ volumes: { water: '488 L', separatorGas: '600 L' } }));
    plant.run(2);
    expect(newest(plant)).toMatchObject({ endedFor: 'configuration', verdict: null });
    expect(plant.pipeline.tightnessTests()).toHaveLength(2);
  });

  it('ends as interrupted at a restart, at the time at which the program goes on', () => {
    const before = plantAtRest();
    start(before);
    const records = before.pipeline.tightnessTests();
    const plant = plantAtRest();
    plant.pipeline.restoreTightness(records);
    plant.run(1);
    const [change] = plant.pipeline.takeTightnessChanges();
    expect(change).toMatchObject({ what: 'ended', atMs: plant.nowMs, test: { endedFor: 'interrupted' } });
    expect(newest(plant)).toMatchObject({ endedFor: 'interrupted', endedMs: plant.nowMs });
  });
});
