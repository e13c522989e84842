import { describe, expect, it } from 'vitest';
import type { SlotState } from '../../../../../backend/src/evaluation/slots/slot-state';
import { reasonBit } from '../../../../../backend/src/evaluation/slots/quality-reasons';
import { slotOf } from '../../../../helpers/small-site';
import { Plant, plantSite } from './plant';
import { seeded, withNoise } from './sensor-noise';

const units = ['m1', 'm2', 'm3'];
const site = (more: Parameters<typeof plantSite>[0] = {}) => plantSite({ units, ...more });

const columnsOf = (state: SlotState): object => ({ ...state });

/** Three units with noise, a cut hose, a silent unit, water; `each` is called after every second. */
function eventful(plant: Plant, seconds: number, each: (second: number) => void): Plant {
  const random = seeded(7);
  const rest = Object.fromEntries(Object.entries(plant.telemetry).map(([id, one]) => [id, structuredClone(one)]));
  for (let second = 0; second < seconds; second += 1) {
    plant.run(1, () => {
      for (const [id, one] of Object.entries(rest))
        Object.assign(plant.telemetry[id] ?? {}, withNoise(structuredClone(one), random));
      if (second > 60) Object.assign(plant.m1, { levelSeparator: 0.8, vacuumSpeed: 60 });
      if (second > 60 && plant.m1.racks['r2'] !== undefined) Object.assign(plant.m1.racks['r2'], { flow: 20, p: 65 });
      if (second > 80) Object.assign(plant.telemetry['m2'] ?? {}, { flow: 0, pTank: 91 });
      if (second > 100) Object.assign(plant.telemetry['m3'] ?? {}, { water: true });
      if (second > 120) plant.silent.add('m2');
    });
    each(second);
  }
  return plant;
}

describe('a site that takes the place of an equal one', () => {
  it('changes nothing at all, however often: the same alarms at the same moments, the same values', () => {
    const alone = eventful(new Plant(site()), 150, () => undefined);
    const reloaded = new Plant(site());
    eventful(reloaded, 150, (second) => {
      if (second % 3 === 0) reloaded.reload(site());
    });
    expect(alone.transitions.length).toBeGreaterThan(5);
    expect(reloaded.transitions).toEqual(alone.transitions);
    expect(columnsOf(reloaded.pipeline.state)).toEqual(columnsOf(alone.pipeline.state));
    expect(reloaded.pipeline.standing()).toEqual(alone.pipeline.standing());
  });
});

describe('a site that takes the place of another', () => {
  it('keeps values, times and reasons of what is the same, and begins what is new', () => {
    const plant = new Plant(site({ units: ['m1', 'm2'] })).run(40);
    const before = plant.pipeline;
    const next = site({ units: ['m0', 'm2'] });
    plant.reload(next);
    const was = slotOf(before.site, 'm2', 'separator.pressure');
    const now = slotOf(next, 'm2', 'separator.pressure');
    expect(now).toBe(was);
    const { value, sourceMs, acceptedMs, reasons } = plant.pipeline.state;
    expect(value[now]).toBe(before.state.value[was]);
    expect(sourceMs[now]).toBe(before.state.sourceMs[was]);
    expect(acceptedMs[now]).toBe(before.state.acceptedMs[was]);
    expect(reasons[now]).toBe(0);
    const unknown = slotOf(next, 'm0', 'separator.pressure');
    expect(value[unknown]).toBeNaN();
    expect(reasons[unknown]).toBe(reasonBit.notReceived);
  });

  it('forgets a value whose scale or reference was wrong', () => {
    const plant = new Plant(site()).run(40);
    const mended = { path: 'pSeparator', unit: 'kPa', reference: 'gauge', accuracy: '±0.4 kPa' };
    const next = site({ points: { 'separator.pressure': mended } });
    plant.reload(next);
    expect(plant.pipeline.state.value[slotOf(next, 'm1', 'separator.pressure')]).toBeNaN();
    expect(plant.pipeline.state.value[slotOf(next, 'm1', 'supplyTank.pressure')]).toBe(74_000);
  });

  it('ends the alarms of a unit that is gone by configuration, now, and no other alarm', () => {
    const plant = new Plant(site()).run(40);
    for (const id of ['m1', 'm3']) Object.assign(plant.telemetry[id] ?? {}, { water: true });
    plant.run(10);
    const standing = plant.pipeline.standing().map(({ alarm }) => alarm);
    expect([...standing].sort()).toEqual(['m1:WATER-1', 'm3:WATER-1']);
    plant.transitions.length = 0;
    plant.reload(site({ units: ['m2', 'm3'] })).run(1);
    expect(plant.transitions).toEqual([
      expect.objectContaining({ alarm: 'm1:WATER-1', to: 'normal', cause: 'configuration', atMs: plant.nowMs - 1000 }),
    ]);
    plant.run(60);
    expect(plant.pipeline.standing().map(({ alarm }) => alarm)).toEqual(['m3:WATER-1']);
  });

  it('lets a standing alarm keep its acknowledgement and clear only when its condition is gone', () => {
    const plant = new Plant(site()).run(40);
    plant.m1.pTank = 95;
    plant.run(60);
    const actor = { operator: 'A. Shift', station: 'desk', comment: '' };
    expect(plant.pipeline.act({ kind: 'acknowledge', alarm: 'm1:MARGIN-2', ...actor }, plant.nowMs).ok).toBe(true);
    const before = plant.pipeline.standing();
    plant.reload(site({ unit: { limits: { 'DEW-1': { limit: '3 K' } } } }));
    expect(plant.pipeline.standing()).toEqual(before);
    plant.run(5);
    expect(plant.standing('MARGIN-2')).toMatchObject({ active: true, acknowledgedBy: 'A. Shift' });
    plant.m1.pTank = 74;
    plant.run(120);
    expect(plant.standing('MARGIN-2')?.active ?? false).toBe(false);
  });

  it('judges by a changed limit at once, with its delays', () => {
    const plant = new Plant(site()).run(120);
    expect(plant.standing('MARGIN-1')).toBeUndefined();
    plant.reload(site({ unit: { limits: { 'MARGIN-1': { limit: '40 kPa', onDelay: '10 s' } } } }));
    plant.run(9);
    expect(plant.standing('MARGIN-1')).toBeUndefined();
    plant.run(5);
    expect(plant.standing('MARGIN-1')).toMatchObject({ active: true, limit: 40_000 });
  });

  it('switches an entry off by configuration', () => {
    const plant = new Plant(site()).run(40);
    plant.m1.pTank = 95;
    plant.run(60);
    expect(plant.standing('MARGIN-2')?.active).toBe(true);
    plant.transitions.length = 0;
    plant.reload(site({ unit: { limits: { 'MARGIN-2': { enabled: false } } } })).run(5);
    expect(plant.transitions.find(({ alarm }) => alarm === 'm1:MARGIN-2')).toMatchObject({ cause: 'configuration' });
  });

  it('gives new points the grace of a start, and none to those that were silent already', () => {
    const plant = new Plant(site({ units: ['m1'] })).run(90);
    plant.reload(site({ units: ['m1', 'm9'] }));
    plant.silent.add('m9');
    plant.run(50);
    expect(plant.pipeline.standing()).toEqual([]);
    plant.run(60);
    expect(plant.pipeline.standing().some(({ unit }) => unit === 'm9')).toBe(true);
  });
});
