import { describe, expect, it } from 'vitest';
import { Plant, plantSite } from '../plant';
import { begin, confirm, newest } from './guided-plant';

const site = plantSite({
  modePoint: true,
  unit: { plates: { p1: { name: 'Chip 1', branch: 'r1', elevation: '1.3 m' } } },
  points: { 'plate.*.temperature': { path: 'chips.{plate}', unit: '°C', accuracy: '±0.2 °C' } },
});
const wish = { plate: 'p1', meters: 'Power 4711, flow 4712; certificates of March' } as const;
const at = (flow: number, power = 700) => ({ power, powerBand: 7, flow, flowBand: 0.01 });

/** Supply at 40 °C. */
function bench(caseC: number): Plant {
  const plant = new Plant(site);
  Object.assign(plant.m1, { tSupply: 40, tReturn: 48, chips: { p1: caseC } });
  return plant.run(70);
}

describe('the resistance of a cold plate', () => {
  it('is 0.031429 K/W where the case stands at 62 °C over water of 40 °C at 700 W, and falls with flow (definition; case to inlet)', () => {
    const plant = bench(62);
    expect(begin(plant, 'plateResistance', { ...wish, points: 2 })).toMatchObject({ ok: true });
    confirm(plant);
    expect(confirm(plant, at(1))).toMatchObject({ ok: true });
    plant.run(200);
    expect(newest(plant)).toMatchObject({ state: 'confirm', at: 3 });
    Object.assign(plant.m1, { chips: { p1: 57 } });
    plant.run(60);
    confirm(plant, at(2));
    plant.run(200);
    const { figures } = newest(plant).result ?? { figures: [] };
    expect(newest(plant)).toMatchObject({ endedFor: 'completed', verdict: 'notDecided' });
    expect(figures.map(({ value }) => value)).toEqual([expect.closeTo(0.031429, 6), expect.closeTo(17 / 700, 6)]);
    // u² = (0.2² + 0.23²)/3 K² over (700 W)² and (R · 1 %)²/3: Pt100 A at 40 °C is ±0.23 K.
    const u = Math.hypot(Math.hypot(0.2, 0.23) / 700, 0.031429 * 0.01) / Math.sqrt(3);
    expect(figures[0]?.expandedUncertainty).toBeCloseTo(2 * u, 5);
    expect(figures[0]?.title).toBe('At 1 ± 0.01 L/min and 700 W');
  });

  it('passes and fails against a limit, the whole interval with it', () => {
    for (const [most, verdict] of [
      [0.04, 'passes'],
      [0.031, 'notDecided'],
      [0.02, 'fails'],
    ] as const) {
      const plant = bench(62);
      begin(plant, 'plateResistance', { ...wish, points: 1, most });
      confirm(plant);
      confirm(plant, at(1));
      plant.run(200);
      expect(newest(plant).verdict, String(most)).toBe(verdict);
    }
  });

  it('waits for a case that still moves, and asks for what the bench reads', () => {
    const plant = bench(62);
    begin(plant, 'plateResistance', { ...wish, points: 1 });
    confirm(plant);
    expect(confirm(plant, {})).toMatchObject({ ok: false, code: 'GUIDED_SETTING' });
    expect(confirm(plant, { ...at(1), powerBand: 0 })).toMatchObject({ ok: false, code: 'GUIDED_SETTING' });
    confirm(plant, at(1));
    plant.run(300, (second) => Object.assign(plant.m1, { chips: { p1: 62 + second * 0.01 } }));
    expect(newest(plant).state).toBe('measure');
  });

  it('does not begin without the meters of the bench by number: their readings are half of the record', () => {
    expect(begin(bench(62), 'plateResistance', { plate: 'p1' })).toMatchObject({ ok: false, code: 'GUIDED_SETTING' });
  });

  it('is refused of a plate that is not there, of half a point, and without flow', () => {
    const plant = bench(62);
    expect(begin(plant, 'plateResistance', { ...wish, plate: 'none' })).toMatchObject({ code: 'GUIDED_SETTING' });
    expect(begin(plant, 'plateResistance', { ...wish, points: 1.5 })).toMatchObject({ code: 'GUIDED_SETTING' });
    Object.assign(plant.m1, { flow: 0, pumpRunning: false });
    plant.run(10);
    expect(plant.pipeline.guidedRefusals(0, 'plateResistance').map(({ code }) => code)).toContain('GUIDED_FLOW');
  });
});
