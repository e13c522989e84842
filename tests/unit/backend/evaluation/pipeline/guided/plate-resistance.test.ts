import { describe, expect, it } from 'vitest';
import { Plant, plantSite } from '../plant';
import { act, begin, confirm, newest } from './guided-plant';

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
    expect(figures[0]?.title).toBe('Point 1: at 1 ± 0.01 L/min and 700 W');
  });

  /** R = 0.012 + 0.02 · Q^−0.6 K/W over 40 °C, plus `more` at one place. */
  const caseAt = (flow: number, more = 0, power = 700): number => 40 + power * (0.012 + 0.02 * flow ** -0.6 + more);
  function measured(
    flows: readonly number[],
    settings: object = {},
    off: Readonly<Record<number, number>> = {},
  ): Plant {
    const plant = bench(62);
    expect(begin(plant, 'plateResistance', { ...wish, points: flows.length, ...settings })).toMatchObject({ ok: true });
    confirm(plant);
    for (const [i, flow] of flows.entries()) {
      Object.assign(plant.m1, { chips: { p1: caseAt(flow, off[i]) } });
      plant.run(60);
      expect(confirm(plant, at(flow))).toMatchObject({ ok: true });
      plant.run(200);
    }
    return plant;
  }
  const curveOf = (plant: Plant) => newest(plant).result?.curve;
  const term = (plant: Plant, symbol: string) => curveOf(plant)?.terms.find((one) => one.symbol === symbol);

  it('finds R₀, c and n of five points that lie on a curve, each within its interval, and draws the curve with its band', () => {
    const plant = measured([0.5, 0.8, 1.2, 1.8, 2.6]);
    // Twice the standard deviations of 1,500 draws, each fitted on a grid of exponents by another program (JCGM 101:2008, 5.9).
    for (const [symbol, truth, drawn] of [
      ['R₀', 0.012, 0.00063],
      ['c', 0.02, 0.00031],
      ['n', 0.6, 0.0185],
    ] as const) {
      const found = term(plant, symbol);
      expect(Math.abs((found?.value ?? NaN) - truth), symbol).toBeLessThan(0.02 * truth);
      expect(Math.abs((found?.expandedUncertainty ?? NaN) / drawn - 1), symbol).toBeLessThan(0.1);
    }
    const curve = curveOf(plant);
    expect(curve?.points.map(({ title }) => title)).toEqual([1, 2, 3, 4, 5].map((n) => `Point ${n}`));
    for (const { above } of curve?.points ?? []) expect(Math.abs(above ?? NaN)).toBeLessThan(1e-5);
    // Flow in m³/s; the same draws: 0.00083 K/W.
    const [first] = curve?.line ?? [];
    expect(first?.across).toBeCloseTo(0.5 / 60_000, 12);
    expect(first?.up).toBeCloseTo(0.012 + 0.02 * 0.5 ** -0.6, 4);
    expect(Math.abs((first?.uncertainty ?? NaN) / 0.00083 - 1)).toBeLessThan(0.1);
  });

  it('names the point that lies off the curve, with its residual', () => {
    const plant = measured([0.5, 0.8, 1.2, 1.8, 2.6], {}, { 2: 0.004 });
    const residuals = curveOf(plant)?.points.map(({ above }) => above ?? NaN) ?? [];
    expect(residuals.indexOf(Math.max(...residuals))).toBe(2);
    expect(residuals[2]).toBeGreaterThan(0.001);
    expect(newest(plant).result?.notes.join()).toMatch(/Farther from the curve.*point 3/);
    expect(measured([0.5, 0.8, 1.2, 1.8, 2.6]).pipeline.guidedTests().at(-1)?.result?.notes.join()).not.toMatch(
      /Farther/,
    );
  });

  it('takes n as the site file has it where three flows are too few to fit it, and draws no curve through less', () => {
    const three = measured([0.5, 1, 2]);
    // 0.8 where nothing is stated.
    expect(term(three, 'n')).toMatchObject({ value: 0.8, expandedUncertainty: null });
    expect(curveOf(three)?.said).toContain('n is not fitted');
    expect(curveOf(measured([0.5, 1]))).toMatchObject({
      law: '',
      said: expect.stringContaining('three flows') as string,
    });
    expect(curveOf(measured([1, 1.2, 1.4]))).toMatchObject({
      law: '',
      said: expect.stringContaining('1.5 times') as string,
    });
  });

  it('draws none where the resistance need not fall with flow', () => {
    const flat = measured([0.5, 1, 2], {}, { 0: -0.02 * 0.5 ** -0.6, 1: -0.02, 2: -0.02 * 2 ** -0.6 });
    expect(curveOf(flat)).toMatchObject({ law: '', said: expect.stringContaining('need not fall') as string });
    expect(curveOf(flat)?.points.map(({ above }) => above)).toEqual([null, null, null]);
  });

  it('holds the curve against the limit at a chosen flow between those that were measured, and judges nothing beyond them', () => {
    // 0.0309 K/W at 1.1 L/min.
    for (const [most, verdict] of [
      [0.035, 'passes'],
      [0.031, 'notDecided'],
      [0.025, 'fails'],
    ] as const) {
      const plant = measured([0.5, 0.8, 1.2, 1.8, 2.6], { most, at: 1.1 });
      expect(newest(plant).verdict, String(most)).toBe(verdict);
      expect(newest(plant).result?.figures[0]).toMatchObject({ title: 'By the curve, at 1.1 L/min', verdict });
      expect(newest(plant).result?.figures[1]?.verdict).toBeNull();
    }
    const beyond = measured([0.5, 1, 2], { most: 0.04, at: 4 });
    expect(newest(beyond).verdict).toBe('notDecided');
    expect(newest(beyond).result?.notes.join()).toContain('no curve of these points reaches');
  });

  it('that is broken off tells the points that are whole, and of the one under way what was measured until then, without a verdict', () => {
    const plant = bench(caseAt(1));
    begin(plant, 'plateResistance', { ...wish, points: 2, most: 0.04 });
    confirm(plant);
    confirm(plant, at(1));
    plant.run(200);
    Object.assign(plant.m1, { chips: { p1: caseAt(2) } });
    confirm(plant, at(2));
    plant.run(50);
    act(plant, { act: 'cancel', test: newest(plant).id });
    const record = newest(plant);
    expect(record).toMatchObject({ endedFor: 'cancelled', verdict: null });
    expect(record.result?.figures).toMatchObject([{ title: 'Point 1: at 1 ± 0.01 L/min and 700 W', verdict: null }]);
    const open = record.steps.find(({ id }) => id === 'point-2');
    expect(open).toMatchObject({ doneMs: null, measured: { samples: 50 } });
    expect(open?.measured?.readings[0]?.least).toBeCloseTo(caseAt(2), 1);
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
