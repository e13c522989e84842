import { describe, expect, it } from 'vitest';
import { guidedSummary } from '../../../../../../backend/src/evaluation/pipeline/guided/guided-summary';
import { Plant, plantSite } from '../plant';
import { begin, confirm, newest, noise } from './guided-plant';

const site = plantSite({
  modePoint: true,
  points: { 'pump.standby.running': { path: 'standbyPump' }, 'pump.available': { path: 'standbyReady' } },
});
function running(more: object = {}): Plant {
  const plant = new Plant(site);
  Object.assign(plant.m1, { standbyPump: false, standbyReady: true, ...more });
  return plant.run(70);
}
/** A check whose change-over is ordered now. */
function ordered(plant: Plant, settings: Readonly<Record<string, number>> = {}): Plant {
  expect(begin(plant, 'pumpChangeOver', settings)).toMatchObject({ ok: true });
  confirm(plant, {}, 'cautions');
  plant.run(75, (second) => (plant.m1.flow = 346 + 0.5 * noise(second)));
  expect(confirm(plant, {}, 'order')).toMatchObject({ ok: true });
  return plant;
}
const changedOver = { standbyPump: true, pumpRunning: false } as const;
const figure = (plant: Plant, title: RegExp) => newest(plant).result?.figures.find((one) => title.test(one.title));

describe('the change-over to the standby pump', () => {
  it('tells the seconds until the standby alone moves the water, the least flow as a share of that before, and the least margin', () => {
    const plant = ordered(running());
    plant.run(4).m1.flow = 311.4;
    plant.run(1);
    Object.assign(plant.m1, changedOver);
    plant.run(3).m1.flow = 346;
    plant.run(80);
    expect(newest(plant)).toMatchObject({ endedFor: 'completed', verdict: 'passes' });
    expect(figure(plant, /^Seconds/)?.value).toBe(6);
    // 311.4 of 346 L/min.
    expect(figure(plant, /^Least flow/)?.value).toBeCloseTo(0.9, 3);
    expect(figure(plant, /^Least vacuum/)?.value).toBeGreaterThan(10_000);
  });

  it('fails where it takes too long or the flow falls too far, and decides nothing where the interval holds the limit', () => {
    const slow = ordered(running(), { seconds: 3 }).run(9);
    Object.assign(slow.m1, changedOver);
    expect(figure(slow.run(90), /^Seconds/)).toMatchObject({ verdict: 'fails' });
    for (const [flow, verdict] of [
      [240, 'fails'],
      [276.8, 'notDecided'],
    ] as const) {
      const plant = ordered(running());
      plant.m1.flow = flow;
      plant.run(2);
      Object.assign(plant.m1, { ...changedOver, flow: 346 });
      expect(figure(plant.run(90), /^Least flow/)).toMatchObject({ verdict });
    }
  });

  it('is broken off where no water flows, and says how the plant must not be left', () => {
    const plant = ordered(running());
    Object.assign(plant.m1, { flow: 0, pumpRunning: false });
    plant.run(15);
    expect(['gateLost', 'alarm']).toContain(newest(plant).endedFor);
    expect(newest(plant).verdict).toBeNull();
    expect(guidedSummary(newest(plant))).toMatch(/one pump runs/);
  });

  it.each([
    ['GUIDED_MODE', { mode: 'starting' }],
    ['GUIDED_INPUT_BAD', { standbyReady: false }],
    ['GUIDED_STANDBY_RUNS', { standbyPump: true }],
    ['GUIDED_MARGIN', { pTank: 90 }],
  ] as const)('is refused by %s', (code, more) => {
    const refusals = running(more).pipeline.guidedRefusals(0, 'pumpChangeOver');
    expect(refusals.map((one) => one.code)).toContain(code);
  });

  it('is refused where the unit has no standby pump', () => {
    const plant = new Plant(plantSite({ modePoint: true })).run(10);
    expect(plant.pipeline.guidedRefusals(0, 'pumpChangeOver')).toMatchObject([{ code: 'GUIDED_NO_POINT' }]);
  });
});
