import { describe, expect, it } from 'vitest';
import { guidedSummary } from '../../../../../../backend/src/evaluation/pipeline/guided/guided-summary';
import { Plant, plantSite } from '../plant';
import { begin, confirm, newest, noise } from './guided-plant';

const site = plantSite({
  modePoint: true,
  points: { 'vacuum.standby.running': { path: 'standbyRunning' }, 'vacuum.available': { path: 'standbyReady' } },
});

function running(more: object = {}): Plant {
  const plant = new Plant(site);
  Object.assign(plant.m1, { standbyRunning: false, standbyReady: true, ...more });
  return plant.run(70);
}
/** A check whose change-over was ordered just now. */
function ordered(plant: Plant, settings: Readonly<Record<string, number>> = {}): Plant {
  expect(begin(plant, 'changeOver', settings)).toMatchObject({ ok: true });
  expect(confirm(plant, {}, 'cautions')).toMatchObject({ ok: true });
  plant.run(75, (second) => (plant.m1.pSeparator = 32 + 0.05 * noise(second)));
  expect(newest(plant)).toMatchObject({ state: 'confirm', at: 2 });
  expect(confirm(plant, {}, 'order')).toMatchObject({ ok: true });
  return plant;
}
const figure = (plant: Plant, title: RegExp) => newest(plant).result?.figures.find((one) => title.test(one.title));

describe('the change-over to the standby vacuum source', () => {
  it('tells the seconds until the standby alone holds the vacuum, the rise and the least margin', () => {
    const plant = ordered(running());
    plant.run(8, (second) => (plant.m1.pSeparator = 32 + 0.2 * second));
    Object.assign(plant.m1, { standbyRunning: true, vacuumRunning: false, pSeparator: 33 });
    plant.run(20).m1.pSeparator = 32;
    plant.run(80);
    expect(newest(plant)).toMatchObject({ endedFor: 'completed', verdict: 'passes' });
    expect(figure(plant, /^Seconds/)?.value).toBe(9);
    expect(figure(plant, /^Rise/)?.value).toBeCloseTo(1400, -2);
    // Sound unit M: 12.7 kPa at its lowest point while it stands, by hand arithmetic of the parameter set.
    expect(figure(plant, /^Least/)?.value).toBeGreaterThan(10_000);
  });

  it('fails where it takes too long or the pressure rises too far', () => {
    const slow = ordered(running(), { seconds: 5 });
    slow.run(12);
    Object.assign(slow.m1, { standbyRunning: true, vacuumRunning: false });
    slow.run(90);
    expect(figure(slow, /^Seconds/)).toMatchObject({ verdict: 'fails' });
    const far = ordered(running());
    far.m1.pSeparator = 38;
    far.run(3);
    Object.assign(far.m1, { standbyRunning: true, vacuumRunning: false, pSeparator: 32 });
    far.run(90);
    expect(newest(far).verdict).toBe('fails');
    expect(figure(far, /^Rise/)).toMatchObject({ verdict: 'fails' });
  });

  it('is refused where the standby carries the vacuum already: what has changed over before shows no seconds', () => {
    const before = running({ standbyRunning: true, vacuumRunning: false });
    expect(before.pipeline.guidedRefusals(0, 'changeOver').map((one) => one.code)).toContain('GUIDED_STANDBY_RUNS');
    expect(begin(before, 'changeOver')).toMatchObject({ ok: false, code: 'GUIDED_STANDBY_RUNS' });
  });

  it('decides nothing where the standby ran before the count began', () => {
    const plant = running();
    begin(plant, 'changeOver');
    confirm(plant);
    plant.run(75);
    Object.assign(plant.m1, { standbyRunning: true, vacuumRunning: false });
    plant.run(10);
    expect(confirm(plant, {}, 'order')).toMatchObject({ ok: true });
    plant.run(90);
    expect(newest(plant)).toMatchObject({ endedFor: 'completed', verdict: 'notDecided' });
    expect(figure(plant, /^Seconds/)).toBeUndefined();
    expect(newest(plant).result?.notes.join()).toMatch(/ran already/);
  });

  it('says how the plant is left where it does not go through, as a unit must not stay without its source', () => {
    const plant = ordered(running());
    plant.m1.mode = 'stopping';
    plant.run(10);
    expect(newest(plant).endedFor).toBe('gateLost');
    expect(guidedSummary(newest(plant))).toMatch(/one vacuum source runs/);
  });

  it('is given up where the standby does not come', () => {
    const plant = ordered(running()).run(605);
    expect(newest(plant)).toMatchObject({ endedFor: 'neverSteady', verdict: null });
    expect(newest(plant).endedSaid).toContain('did not come');
  });

  it.each([
    ['GUIDED_MODE', { mode: 'starting' }],
    ['GUIDED_INPUT_BAD', { standbyReady: false }],
    ['GUIDED_MARGIN', { pTank: 90 }],
  ] as const)('is refused by %s', (code, more) => {
    expect(
      running(more)
        .pipeline.guidedRefusals(0, 'changeOver')
        .map((one) => one.code),
    ).toContain(code);
  });

  it('is refused where the unit has no standby', () => {
    const plant = new Plant(plantSite({ modePoint: true })).run(10);
    expect(plant.pipeline.guidedRefusals(0, 'changeOver')).toMatchObject([{ code: 'GUIDED_NO_POINT' }]);
  });
});
