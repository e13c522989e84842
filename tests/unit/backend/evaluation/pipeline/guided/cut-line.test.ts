import { describe, expect, it } from 'vitest';
import { guidedSummary } from '../../../../../../backend/src/evaluation/pipeline/guided/guided-summary';
import { Plant, plantSite } from '../plant';
import { act, begin, confirm, newest } from './guided-plant';

const lpm = 1 / 60_000;
const site = plantSite({
  modePoint: true,
  points: {
    'vacuum.exhaustFlow': { path: 'exhaust', unit: 'free L/min', accuracy: '3 % of reading' },
    'vacuum.sealWater.temperature': { path: 'seal', unit: '°C', accuracy: 'Pt100 A' },
    'tray.water.found': { path: 'tray' },
    'branch.*.isolated': { path: 'racks.{branch}.shut' },
    'branch.*.power': { path: 'racks.{branch}.power', unit: 'kW', accuracy: '1 % of reading' },
  },
});
const wish = { branch: 'r1', bore: 2, second: 'Otto', permit: 'W-17' } as const;

/** Everything behind the trial stands: load off, permit open, tray and rope dry. */
function ready(branch: 'r1' | 'none' = 'r1'): Plant {
  const plant = new Plant(site);
  Object.assign(plant.m1, { exhaust: 3, seal: 25, tray: false });
  for (const rack of Object.values(plant.m1.racks)) Object.assign(rack, { power: 0.1, shut: false });
  plant.run(90);
  return branch === 'none' ? plant : permitted(plant, branch);
}
function permitted(plant: Plant, branch = 'r1'): Plant {
  const opened = plant.pipeline.actOnPermit(
    {
      kind: 'openPermit',
      unit: 'm1',
      branch,
      untilMs: plant.nowMs + 3_600_000,
      expectedInLeakM3PerS: 60 * lpm,
      operator: 'Ada',
      station: 's',
      comment: '',
    },
    plant.nowMs,
  );
  expect(opened.ok).toBe(true);
  return plant.run(3);
}

/** The steps before anything is measured, each by whom it is for. */
function confirmedByBoth(plant: Plant): void {
  confirm(plant, {}, 'cautions');
  confirm(plant, {}, 'ready');
  expect(confirmAs(plant, 'Otto', 'second')).toMatchObject({ ok: true });
}
const confirmAs = (plant: Plant, operator: string, step: string, how: { readonly byToken?: true } = {}) =>
  act(plant, { act: 'confirm', test: newest(plant).id, step, given: {}, operator, ...how });

describe('the trial of a small opening', () => {
  it('is offered where everything stands behind it, with the branches to choose from, and not before a branch has a permit', () => {
    const plant = ready();
    expect(plant.pipeline.guidedRefusals(0, 'cutLine')).toEqual([]);
    expect(plant.pipeline.guidedAsks(0, 'cutLine').find(({ key }) => key === 'branch')?.choices).toContainEqual({
      value: 'r1',
      name: 'Rack 1',
    });
    const bare = ready('none');
    expect(bare.pipeline.guidedRefusals(0, 'cutLine').map(({ code }) => code)).toEqual(['GUIDED_PERMIT']);
  });

  it('goes on only when the second person has confirmed under their own name, and is opened on the word of another', () => {
    const plant = ready();
    begin(plant, 'cutLine', wish);
    confirm(plant);
    confirm(plant);
    for (const operator of ['Ada', 'Ida'])
      expect(confirmAs(plant, operator, 'second')).toMatchObject({ ok: false, code: 'GUIDED_SECOND' });
    expect(confirmAs(plant, 'Otto', 'second', { byToken: true })).toMatchObject({ ok: false, code: 'GUIDED_SECOND' });
    expect(newest(plant).state).toBe('confirm');
    expect(confirmAs(plant, ' otto', 'second')).toMatchObject({ ok: true });
    plant.run(75);
    expect(confirmAs(plant, 'Otto', 'opened')).toMatchObject({ ok: false, code: 'GUIDED_SECOND' });
    expect(confirmAs(plant, 'Ida', 'opened')).toMatchObject({ ok: true });
    expect(newest(plant).steps.map(({ by }) => by)).toEqual(['Ada', 'Ada', ' otto', null, 'Ida', null, null, null]);
  });

  it('is offered where everything stands behind it, and tells what came in beside what its bore lets in', () => {
    const plant = ready();
    expect(begin(plant, 'cutLine', wish)).toEqual(expect.objectContaining({ ok: true }));
    confirmedByBoth(plant);
    plant.run(75);
    expect(newest(plant).steps[newest(plant).at]?.id).toBe('opened');
    confirm(plant);
    Object.assign(plant.m1, { exhaust: 30 });
    plant.run(135);
    expect(newest(plant).steps[newest(plant).at]?.id).toBe('closed');
    Object.assign(plant.m1, { exhaust: 3 });
    confirm(plant);
    plant.run(80);
    const record = newest(plant);
    expect(record).toMatchObject({ endedFor: 'completed', verdict: 'passes' });
    const air = record.result?.figures.find(({ title }) => title === 'Air that came in');
    expect((air?.value ?? NaN) / lpm).toBeGreaterThan(20);
    // A bore of 2 mm with C_d 0.7 draws 26 free L/min, choked (NACA Report 1135; Ebbline takes the unit's own C_d).
    expect(record.result?.notes.join()).toMatch(/By its bore (2[2-9]|3[0-2]) free L\/min/);
  });

  it.each([
    ['GUIDED_MARGIN', (plant: Plant): unknown => (plant.m1.pTank = 84)],
    ['GUIDED_LOAD', (plant: Plant): unknown => Object.values(plant.m1.racks).forEach((rack) => (rack.power = 30))],
    ['GUIDED_TRAY', (plant: Plant): unknown => Object.assign(plant.m1, { tray: true })],
    ['GUIDED_MODE', (plant: Plant): unknown => (plant.m1.mode = 'starting')],
    ['GUIDED_RESERVE', (plant: Plant): unknown => Object.assign(plant.m1, { pSeparator: 7 })],
  ] as const)('is refused by %s, and broken off by it at once', (code, change) => {
    const plant = ready();
    begin(plant, 'cutLine', wish);
    confirmedByBoth(plant);
    plant.run(5);
    expect(newest(plant).state).toBe('measure');
    change(plant);
    plant.run(5);
    expect(['gateLost', 'alarm']).toContain(newest(plant).endedFor);
    plant.run(60);
    const outcome = begin(plant, 'cutLine', wish);
    expect(outcome.ok).toBe(false);
    expect(plant.pipeline.guidedRefusals(0, 'cutLine').map((one) => one.code)).toContain(code);
  });

  it('is broken off while it waits for the opening to be shut, as soon as something behind it fails, and says to shut it', () => {
    const plant = ready();
    begin(plant, 'cutLine', wish);
    confirmedByBoth(plant);
    plant.run(75);
    confirm(plant, {}, 'opened');
    plant.run(135);
    expect(newest(plant).steps[newest(plant).at]?.id).toBe('closed');
    plant.m1.pTank = 84;
    plant.run(3);
    expect(newest(plant)).toMatchObject({ endedFor: 'gateLost', verdict: null });
    expect(guidedSummary(newest(plant))).toMatch(/shut the opening/i);
  });

  it('counts nothing of a leak that is there already as its own opening: the reserve has to stand above it', () => {
    const plant = ready();
    // The source carries some 290 free L/min: 200 of a leak leave 90, and a bore of 4 mm asks for 1.5 × 105 (NACA Report 1135).
    Object.assign(plant.m1, { exhaust: 200 });
    plant.run(60);
    expect(begin(plant, 'cutLine', { ...wish, bore: 4 })).toMatchObject({ ok: false, code: 'GUIDED_RESERVE' });
  });

  it('is refused at a branch that is valved off, as the margin of the loop does not hold there', () => {
    const plant = ready();
    Object.assign(plant.m1.racks['r1'] ?? {}, { shut: true });
    plant.run(5);
    expect(begin(plant, 'cutLine', wish)).toMatchObject({ ok: false });
    expect(JSON.stringify(begin(plant, 'cutLine', wish))).toContain('valved off');
  });

  it('is refused above 5 mm, alone, and without an open permit of that very branch', () => {
    const plant = ready();
    expect(begin(plant, 'cutLine', { ...wish, bore: 5.1 })).toMatchObject({ code: 'GUIDED_SETTING' });
    expect(begin(plant, 'cutLine', { ...wish, second: ' ada' })).toMatchObject({ code: 'GUIDED_SETTING' });
    expect(begin(plant, 'cutLine', { ...wish, branch: 'r2' })).toMatchObject({ code: 'GUIDED_PERMIT' });
    expect(begin(plant, 'cutLine', { ...wish, branch: 'none' })).toMatchObject({ code: 'GUIDED_SETTING' });
  });
});
