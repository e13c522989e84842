import { describe, expect, it } from 'vitest';
import { reasonBit } from '../../../../../backend/src/evaluation/slots/quality-reasons';
import { Plant, plantSite } from './plant';

/** Two sources held by speed, no exhaust meter; whether the standby runs is told, and its speed is not. */
function plant(points: object = {}): Plant {
  const vacuumSource = {
    count: 2,
    control: 'speed',
    curve: [
      { pressure: '5 kPa', suction: '10 m3/h' },
      { pressure: '32 kPa', suction: '62 m3/h' },
      { pressure: '101 kPa', suction: '78 m3/h' },
    ],
  };
  const standby = { 'vacuum.standby.running': { path: 'standbyRunning' }, ...points };
  const one = new Plant(plantSite({ unit: { vacuumSource, hoseBore: '4 mm' }, points: standby }));
  Object.assign(one.m1, { standbyRunning: false });
  return one.run(60);
}

const reading = ({ pipeline: { site, state } }: Plant, point: string) => {
  const slot = site.holders[site.units[0]?.holder ?? -1]?.slotOf.get(point) ?? -1;
  return { value: state.value[slot] ?? 0, reasons: state.reasons[slot] ?? 0 };
};
const active = (one: Plant, entry: string): boolean | undefined => one.standing(entry)?.active;

/** A hose is open: water goes up by 8 L within seconds, and the lead works at nine tenths for it. */
function hoseOpen(one: Plant): Plant {
  return one.run(90, (second) => {
    if (second < 4) one.m1.levelSeparator += 0.008;
    one.m1.vacuumSpeed = Math.min(90, 20 + 20 * second);
  });
}
const takenOver = { vacuumRunning: false, vacuumSpeed: 0, standbyRunning: true };

describe('a gas load by speed and curve, while the standby source runs', () => {
  it.each([
    ['alone', { vacuumRunning: false, vacuumSpeed: 0 }],
    ['beside the lead', {}],
  ])('is not known where it runs %s, nor is what rests on it', (_how, lead) => {
    const one = plant();
    expect(reading(one, 'gasLoad').value).toBeGreaterThan(0);
    Object.assign(one.m1, { ...lead, standbyRunning: true });
    one.run(5);
    for (const point of ['gasLoad', 'vacuumReserve', 'vacuumReserveAll']) {
      expect(reading(one, point).value, point).toBeNaN();
      expect(reading(one, point).reasons & reasonBit.inputBad, point).not.toBe(0);
    }
    Object.assign(one.m1, { vacuumRunning: true, vacuumSpeed: 20, standbyRunning: false });
    expect(reading(one.run(20), 'gasLoad').value).toBeGreaterThan(0);
  });

  it('is what the exhaust meter says where there is one', () => {
    const one = plant({ 'vacuum.exhaustFlow': { path: 'exhaust', unit: 'free L/min' } });
    Object.assign(one.m1, { exhaust: 120, ...takenOver });
    expect(60_000 * reading(one.run(5), 'gasLoad').value).toBeCloseTo(120, 6);
  });
});

describe('a hose that is open while the lead trips and the standby takes over', () => {
  it('stays told, and so does the reserve that it takes, until the hose is known to be closed', () => {
    const one = hoseOpen(plant());
    expect([active(one, 'AIR-1'), active(one, 'AIR-3')]).toEqual([true, true]);
    Object.assign(one.m1, takenOver);
    one.run(300);
    expect(active(one, 'VSRC-1')).toBe(true);
    expect([active(one, 'AIR-1'), active(one, 'AIR-3')]).toEqual([true, true]);
    Object.assign(one.m1, { vacuumRunning: true, vacuumSpeed: 20, standbyRunning: false, levelSeparator: 0.6 });
    one.run(150);
    expect([active(one, 'AIR-1'), active(one, 'AIR-3')]).not.toContain(true);
  });
});
