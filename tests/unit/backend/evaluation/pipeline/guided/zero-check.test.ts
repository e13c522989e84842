import { describe, expect, it } from 'vitest';
import { guidedSummary } from '../../../../../../backend/src/evaluation/pipeline/guided/guided-summary';
import type { Plant } from '../plant';
import {
  begin,
  confirmUntilMeasured,
  elevations,
  headKpaPerM,
  newest,
  noise,
  ventedPlant,
  zeroSite,
} from './guided-plant';

/** Runs a whole check; the figures by title. */
function checked(plant: Plant, seconds = 120) {
  expect(begin(plant, 'zeroCheck')).toMatchObject({ ok: true });
  confirmUntilMeasured(plant);
  const from = plant.m1.pSeparator;
  plant.run(seconds, (second) => (plant.m1.pSeparator = from + 0.05 * noise(second)));
  const record = newest(plant);
  return { record, figures: new Map((record.result?.figures ?? []).map((figure) => [figure.title, figure])) };
}

describe('the zero check of pressures', () => {
  it('reads every pressure as barometer and head of water: the tanks by nothing, the mains and the pump by their metres', () => {
    const { record, figures } = checked(ventedPlant());
    expect(record).toMatchObject({ state: 'ended', endedFor: 'completed', verdict: 'passes' });
    expect([...figures.keys()]).toEqual(['Supply tank', 'Supply main', 'Return main', 'Separator', 'Pump inlet']);
    for (const { value, low, high } of figures.values()) {
      expect(Math.abs(value)).toBeLessThan(20);
      expect(high).toBeCloseTo(400, 6);
      expect(low).toBeCloseTo(-400, 6);
    }
    expect(guidedSummary(record)).toMatch(/^Passes: each of 5/);
  });

  it('has the head of 2 m of water at 45 °C that hydrostatics gives, 19.42 kPa (ρ g h, IAPWS SR6-08: 990.2 kg/m³)', () => {
    const site = zeroSite({
      unit: {
        elevations: { ...elevations, supplyTankSurface: '2.5 m', supplySensor: '0.5 m' },
      },
    });
    const plant = ventedPlant({}, site);
    Object.assign(plant.m1, { tSupply: 45, pSupply: 19.42 });
    const { figures } = checked(plant.run(5));
    expect(Math.abs(figures.get('Supply main')?.value ?? NaN)).toBeLessThan(10);
  });

  it('fails a sensor that is off by more than its accuracy, the whole interval with it, and names it', () => {
    const { record, figures } = checked(ventedPlant({ separator: 1.2 }));
    expect(record.verdict).toBe('fails');
    expect(figures.get('Separator')).toMatchObject({ verdict: 'fails' });
    expect(figures.get('Separator')?.value).toBeCloseTo(1200, -1);
    expect(figures.get('Supply tank')?.verdict).toBe('passes');
    expect(guidedSummary(record)).toMatch(/^Fails: 1 of 5/);
  });

  it('decides nothing of an absolute sensor near its limit, and of a gauge one in the same place what the barometer can not blur', () => {
    // u of the barometer by ±0.1 kPa: 58 Pa, so ±115 Pa of an absolute reading, and nothing of a gauge one.
    const { record, figures } = checked(ventedPlant({ separator: 0.34, return: 0.37 }));
    expect(record.verdict).toBe('notDecided');
    expect(figures.get('Separator')).toMatchObject({ verdict: 'notDecided' });
    expect(figures.get('Separator')?.expandedUncertainty).toBeGreaterThan(110);
    expect(figures.get('Return main')).toMatchObject({ verdict: 'notDecided' });
    const gauge = figures.get('Return main');
    expect(gauge?.budget.map(({ from }) => from)).not.toContain('ambient.pressure');
    // ±5 mm of the height of surface above sensor, rectangular: 2.9 mm · 9.78 Pa/mm, as in the margins.
    const ofHeight = gauge?.budget.find(({ from }) => from === 'elevations.accuracy');
    expect(ofHeight?.contribution).toBeCloseTo((5 * headKpaPerM) / Math.sqrt(3), 1);
    expect(gauge?.expandedUncertainty).toBeCloseTo((2 * 5 * headKpaPerM) / Math.sqrt(3), -1);
  });

  it('says of a sensor without a stated accuracy that it was not judged', () => {
    const bare = { path: 'pSupply', unit: 'kPa', reference: 'gauge' };
    const site = zeroSite({ points: { 'supply.pressure': bare } });
    const { record, figures } = checked(ventedPlant({}, site));
    expect([...figures.keys()]).toEqual(['Supply tank', 'Return main', 'Separator', 'Pump inlet']);
    expect(record.result?.notes.join(' ')).toMatch(/^Supply main: not judged/);
  });

  it('takes the level into account: water that stands 10 cm higher presses by 1 kPa more', () => {
    const site = zeroSite({ unit: { tanks: { supplyUsualLevel: '0.4 m', supplyArea: '0.3 m2' } } });
    const plant = ventedPlant({ supply: 0.1 * headKpaPerM }, site);
    // The level stands at 0.5 m.
    expect(Math.abs(checked(plant).figures.get('Supply main')?.value ?? NaN)).toBeLessThan(20);
  });

  it('tells of the return main, and judges nothing, where its water may have run back to a lower surface of the supply tank', () => {
    // 0.2 m of water are 1.96 kPa (ρ g h), and the sensor is good for 0.4 kPa.
    const site = zeroSite({ unit: { elevations: { ...elevations, returnInlet: '1.2 m' } } });
    const { record, figures } = checked(ventedPlant({ return: 0.2 * headKpaPerM }, site));
    expect(figures.get('Return main')).toMatchObject({ verdict: null, low: null, high: null });
    expect(Math.abs(figures.get('Return main')?.value ?? NaN)).toBeLessThan(20);
    expect(record.result?.notes.join(' ')).toMatch(/Return main: told, not judged.*0\.20 m/);
    expect(record.verdict).toBe('passes');
  });

  it.each(['levelTank', 'levelSeparator'] as const)(
    'judges no column of water whose surface is not known now (%s): what stands and is vented is not at its usual level',
    (level) => {
      const plant = ventedPlant();
      Object.assign(plant.m1, { [level]: null });
      const { record, figures } = checked(plant.run(120));
      const lost = level === 'levelTank' ? 'Supply main' : 'Pump inlet';
      expect(figures.has(lost)).toBe(false);
      expect(record.result?.notes.join(' ')).toContain(`${lost}: not judged`);
    },
  );

  it('is broken off where a level is lost while it measures, and takes no reading for another', () => {
    const plant = ventedPlant({ separator: 0.3 });
    begin(plant, 'zeroCheck');
    confirmUntilMeasured(plant);
    plant.run(30);
    Object.assign(plant.m1, { levelTank: null });
    plant.run(120);
    expect(newest(plant)).toMatchObject({ endedFor: 'inputBad', verdict: null });
    expect(newest(plant).endedSaid).toMatch(/supply\.pressure/i);
  });

  it('is refused where a unit is told as vented and its tanks stand under vacuum', () => {
    const plant = ventedPlant({ tank: -30, separator: -60 });
    expect(plant.pipeline.guidedRefusals(0, 'zeroCheck').map(({ code }) => code)).toContain('GUIDED_NOT_VENTED');
  });

  it('is given up where a reading does not come to rest', () => {
    const plant = ventedPlant();
    begin(plant, 'zeroCheck');
    confirmUntilMeasured(plant);
    plant.run(905, (second) => (plant.m1.pSeparator = 101.3 - second * 0.002));
    expect(newest(plant)).toMatchObject({ endedFor: 'neverSteady', verdict: null });
    expect(guidedSummary(newest(plant))).toMatch(/^Given up.*No verdict\.$/);
  });

  it.each([
    ['GUIDED_NOT_VENTED', (plant: Plant): unknown => (plant.m1.mode = 'standby')],
    ['GUIDED_SOURCE_RUNS', (plant: Plant): unknown => (plant.m1.vacuumRunning = true)],
    ['GUIDED_FLOW', (plant: Plant): unknown => (plant.m1.pumpRunning = true)],
    ['GUIDED_ALARM', (plant: Plant): unknown => (plant.m1.water = true)],
  ] as const)(
    'is refused by %s, with what is in the way and nothing that asks to vent or to stop the source',
    (code, change) => {
      const plant = ventedPlant();
      change(plant);
      plant.run(10);
      const refusals = plant.pipeline.guidedRefusals(0, 'zeroCheck');
      expect(refusals.map((one) => one.code)).toContain(code);
      const outcome = begin(plant, 'zeroCheck');
      expect(outcome.ok).toBe(false);
      expect(JSON.stringify(refusals)).not.toMatch(/vent the (unit|loop)|stop the (vacuum )?source/i);
    },
  );

  it('is refused where the site file states no accuracy of any pressure', () => {
    const bare = { path: 'pTank', unit: 'kPa', reference: 'absolute' };
    const site = zeroSite({
      points: {
        'supplyTank.pressure': bare,
        'separator.pressure': { ...bare, path: 'pSeparator' },
        'supply.pressure': { ...bare, path: 'pSupply' },
        'return.pressure': { ...bare, path: 'pReturn' },
        'pump.inlet.pressure': { ...bare, path: 'pInlet' },
      },
    });
    expect(ventedPlant({}, site).pipeline.guidedRefusals(0, 'zeroCheck')).toMatchObject([
      { code: 'GUIDED_NO_ACCURACY' },
    ]);
  });
});
