import { describe, expect, it } from 'vitest';
import { Plant, plantSite } from '../plant';
import { begin, confirmUntilMeasured, newest, noise } from './guided-plant';

const exact = (path: string, unit: string): object => ({ path, unit, accuracy: '1 % of reading' });
const site = plantSite({ modePoint: true, points: { 'branch.*.power': exact('racks.{branch}.power', 'kW') } });

/** Four racks of so many kW of chips each, over a loop that carries 346 L/min from 36.3 to 45 °C. */
function running(rackKw: number): Plant {
  const plant = new Plant(site);
  for (const rack of Object.values(plant.m1.racks)) rack.power = rackKw;
  return plant.run(90);
}
function balanced(plant: Plant, settings: Readonly<Record<string, number>> = {}, seconds = 400) {
  expect(begin(plant, 'heatBalance', settings)).toEqual(expect.objectContaining({ ok: true }));
  confirmUntilMeasured(plant);
  plant.run(seconds, (second) => (plant.m1.tReturn = 45 + 0.03 * noise(second)));
  const record = newest(plant);
  return { record, figure: (title: string) => record.result?.figures.find((one) => one.title === title) };
}
const capture = 'Heat removed ÷ chip power';

describe('the heat balance', () => {
  it('finds the share of the chips’ power that the loop carries, by the first law, within its uncertainty', () => {
    const { record, figure } = balanced(running(60));
    // ρ q c_p ΔT = 993.5 kg/m³ · 346 L/min · 4.179 kJ/(kg K) · 8.7 K (IAPWS SR6-08 at 36.3 and 40.6 °C), over 240 kW.
    const expected = (993.5 * (346 / 60_000) * 4179 * 8.7) / 240_000;
    expect(record).toMatchObject({ endedFor: 'completed', verdict: 'passes' });
    expect(figure(capture)?.value).toBeCloseTo(expected, 2);
    // Two Pt100 of class A over 8.7 K: 2 · 0.19/√3 ÷ 8.7 is 2.5 % of it alone.
    expect(figure(capture)?.expandedUncertainty).toBeGreaterThan(0.02);
    expect(figure(capture)?.expandedUncertainty).toBeLessThan(0.06);
    const gap = figure('Chip power less heat removed');
    expect(gap).toMatchObject({ verdict: null });
    expect(gap?.value).toBeCloseTo(240_000 * (1 - expected), -4);
  });

  it('fails where more heat is found than the chips draw, and decides nothing where the interval holds the limit', () => {
    expect(balanced(running(40)).record.verdict).toBe('fails');
    const { record, figure } = balanced(running(60), { captureLeast: 85, captureMost: 105 });
    expect(figure(capture)?.verdict).toBe('notDecided');
    expect(record.verdict).toBe('notDecided');
  });

  it('counts into each interval what the water may have stored meanwhile, and says so where its volume is not stated', () => {
    const points = { 'branch.*.power': exact('racks.{branch}.power', 'kW') };
    const plant = new Plant(plantSite({ modePoint: true, points, unit: { volumes: { water: '488 L' } } }));
    for (const rack of Object.values(plant.m1.racks)) rack.power = 60;
    const { record, figure } = balanced(plant.run(90));
    // m c_p ΔT/Δt = 488 L · 4.15 MJ/(m³ K) · 0.3 K in 300 s is 2.03 kW at most, rectangular (first law; GUM 4.3.7).
    const stored = figure('Chip power less heat removed')?.budget.find(({ from }) => /stored/.test(from));
    expect(stored?.contribution).toBeCloseTo(2025 / Math.sqrt(3), -1);
    expect(record.result?.notes.join()).not.toContain('no volume');
    expect(balanced(running(60)).record.result?.notes.join()).toContain('no volume of water');
  });

  it('waits until the water is steady, and tells why where it gives up', () => {
    const plant = running(60);
    begin(plant, 'heatBalance');
    confirmUntilMeasured(plant);
    plant.run(400, (second) => (plant.m1.tReturn = 45 + second * 0.004));
    expect(newest(plant).state).toBe('measure');
    const { live } = plant.pipeline.guidedNow(newest(plant), plant.nowMs);
    const moving = live?.watched.filter(({ steady }) => !steady).map(({ title }) => title);
    expect(moving).toContain('Return');
    expect(live?.watched.find(({ title }) => title === 'Return')?.drift).toBeCloseTo(0.004 * 300, 1);
    plant.run(400);
    expect(newest(plant).endedFor).toBe('completed');
  });

  it.each([
    ['GUIDED_MODE', (plant: Plant): unknown => (plant.m1.mode = 'standby')],
    ['GUIDED_FLOW', (plant: Plant): unknown => Object.assign(plant.m1, { flow: 0, pumpRunning: false })],
    ['GUIDED_LOAD', (plant: Plant): unknown => (plant.m1.tReturn = 37)],
  ] as const)('is refused by %s', (code, change) => {
    const plant = running(60);
    change(plant);
    plant.run(10);
    expect(plant.pipeline.guidedRefusals(0, 'heatBalance').map((one) => one.code)).toContain(code);
  });

  it('is refused where a sensor states no accuracy, and where its limits make no sense', () => {
    const bare = new Plant(plantSite({ modePoint: true })).run(30);
    expect(bare.pipeline.guidedRefusals(0, 'heatBalance')).toMatchObject([{ code: 'GUIDED_NO_ACCURACY' }]);
    expect(begin(running(60), 'heatBalance', { captureLeast: 100, captureMost: 90 })).toMatchObject({
      code: 'GUIDED_SETTING',
    });
  });
});
