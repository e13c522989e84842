import { describe, expect, it } from 'vitest';
import { type Plant, plantSite } from '../plant';
import { plantAtRest, start, tightSite } from './tightness-plant';

const withBleed = (): Plant => {
  const site = tightSite({}, { 'vacuum.bleedFlow': { path: 'bleed', unit: 'free L/min', accuracy: '3 % of reading' } });
  return plantAtRest(site);
};

describe('a pressure-rise test is refused', () => {
  it.each([
    ['TIGHTNESS_SOURCE_RUNS', (plant: Plant): unknown => void (plant.m1.vacuumRunning = true)],
    ['TIGHTNESS_FLOW', (plant: Plant): unknown => void (plant.m1.flow = 40)],
    ['TIGHTNESS_FLOW', (plant: Plant): unknown => void (plant.m1.pumpRunning = true)],
    ['TIGHTNESS_NO_VACUUM', (plant: Plant): unknown => void (plant.m1.pSeparator = 98)],
    ['TIGHTNESS_INPUT_BAD', (plant: Plant): unknown => void (plant.m1.tReturn = null)],
  ] as const)('with %s, and begins nothing', (code, happen) => {
    const plant = plantAtRest();
    happen(plant);
    plant.run(20);
    expect(start(plant)).toMatchObject({ ok: false, code });
    expect(plant.pipeline.tightnessRefusals(0).map((one) => one.code)).toEqual([code]);
    expect(plant.pipeline.tightnessTests()).toEqual([]);
  });

  it('while the level moves, and in the first seconds, when that is not known', () => {
    const plant = plantAtRest();
    plant.run(70, (second) => (plant.m1.levelSeparator = 0.6 + second * 0.001));
    expect(start(plant)).toMatchObject({ ok: false, code: 'TIGHTNESS_LEVEL_MOVES' });
    expect(start(plantAtRest(tightSite(), 8))).toMatchObject({ ok: false, code: 'TIGHTNESS_LEVEL_MOVES' });
  });

  it('while air comes in through the bleed', () => {
    const plant = withBleed();
    Object.assign(plant.m1, { bleed: 5 });
    plant.run(5);
    expect(start(plant)).toMatchObject({ ok: false, code: 'TIGHTNESS_BLEED_OPEN' });
  });

  it('with all that is in the way at once, so that nobody has to ask again and again', () => {
    const plant = plantAtRest();
    Object.assign(plant.m1, { vacuumRunning: true, flow: 300 });
    plant.run(5);
    expect(start(plant)).toMatchObject({ message: expect.stringMatching(/vacuum source runs.*; .*water flows/) });
  });

  it('where nothing says how much room there is for gas, unless a person says it', () => {
    const plant = plantAtRest(plantSite());
    expect(start(plant)).toMatchObject({ ok: false, code: 'TIGHTNESS_NO_VOLUME' });
    expect(start(plant, { gasVolumeM3: 1 })).toMatchObject({
      ok: true,
      change: { test: { begin: { gasVolumeM3: 1 } } },
    });
  });

  it('where a sensor states no accuracy', () => {
    const points = { 'return.temperature': { path: 'tReturn', unit: '°C' } };
    const plant = plantAtRest(tightSite({}, points));
    expect(start(plant)).toMatchObject({ ok: false, code: 'TIGHTNESS_NO_ACCURACY' });
  });

  it('where one runs, for an unknown unit, and where it can not be recorded', () => {
    const plant = plantAtRest();
    expect(start(plant, { unit: 'x' })).toMatchObject({ ok: false, code: 'UNIT_UNKNOWN' });
    const asked = { kind: 'startTightness', unit: 'm1', plannedMs: 600_000, acceptanceLimitM3PerS: 1e-6 } as const;
    const rest = { dry: false, sourceIsolated: false, gasVolumeM3: null, operator: 'Ada', station: 's', comment: '' };
    const refused = plant.pipeline.actOnTightness({ ...asked, ...rest }, plant.nowMs, () => false);
    expect(refused).toMatchObject({ ok: false, code: 'ACTION_NOT_RECORDED' });
    expect(start(plant).ok).toBe(true);
    expect(start(plant)).toMatchObject({ ok: false, code: 'TIGHTNESS_RUNNING' });
  });
});

describe('a pressure-rise test begins', () => {
  it('with a running source where a person says that its valve is shut', () => {
    const plant = plantAtRest();
    plant.m1.vacuumRunning = true;
    plant.run(3);
    expect(start(plant, { sourceIsolated: true }).ok).toBe(true);
  });

  it('in a dry loop with the gas of all of it, whatever a flow meter without water reads', () => {
    const plant = plantAtRest();
    plant.m1.flow = 200;
    plant.run(3);
    // 488 L of water, 510 L and 80 L of gas.
    const outcome = start(plant, { dry: true });
    expect(outcome.ok && outcome.change.test.begin.gasVolumeM3).toBeCloseTo(1.078, 9);
  });
});
