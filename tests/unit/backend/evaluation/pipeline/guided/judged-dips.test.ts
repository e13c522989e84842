import { describe, expect, it } from 'vitest';
import type { GuidedKind } from '@ebbline/shared/contract/guided-test';
import { Plant, plantSite } from '../plant';
import { begin, confirm, confirmUntilMeasured, newest, noise } from './guided-plant';

const site = plantSite({
  modePoint: true,
  unit: { plates: { p1: { name: 'Chip 1', branch: 'r1', elevation: '1.3 m' } } },
  points: {
    'pump.standby.running': { path: 'standbyPump' },
    'pump.available': { path: 'standbyReady' },
    'vacuum.standby.running': { path: 'standbySource' },
    'vacuum.available': { path: 'sourceReady' },
    'plate.*.temperature': { path: 'chips.{plate}', unit: '°C', accuracy: '±1 °C' },
  },
});

const resting = { standbyPump: false, standbySource: false, standbyReady: true, sourceReady: true } as const;

/** A change-over that is ordered now. */
function ordered(kind: GuidedKind): Plant {
  const plant = new Plant(site);
  Object.assign(plant.m1, { ...resting, chips: { p1: 60 } });
  plant.run(70);
  expect(begin(plant, kind)).toMatchObject({ ok: true });
  confirm(plant, {}, 'cautions');
  plant.run(75, (second) => {
    plant.m1.flow = 346 + 0.5 * noise(second);
    plant.m1.pSeparator = 32 + 0.05 * noise(second);
  });
  expect(confirm(plant, {}, 'order')).toMatchObject({ ok: true });
  return plant.run(3);
}
const done = {
  pumpChangeOver: { standbyPump: true, pumpRunning: false },
  changeOver: { standbySource: true, vacuumRunning: false },
} as const;
/** Something is so for a few seconds, then it is as before and the standby carries on alone. */
function dipped(kind: keyof typeof done, dip: object, seconds: number): Plant {
  const plant = ordered(kind);
  const before = { ...plant.m1 };
  Object.assign(plant.m1, dip);
  plant.run(seconds);
  Object.assign(plant.m1, before, done[kind]);
  return plant.run(120);
}
const figure = (plant: Plant, title: RegExp) => newest(plant).result?.figures.find((one) => title.test(one.title));
const notes = (plant: Plant): string => newest(plant).result?.notes.join(' ') ?? '';

describe('what a guided test judges by its least or its greatest value', () => {
  it('holds the seconds in which no pump ran and no water flowed, shorter than breaks the test off', () => {
    const plant = dipped('pumpChangeOver', { flow: 0, pumpRunning: false }, 2);
    expect(newest(plant)).toMatchObject({ endedFor: 'completed', verdict: 'fails' });
    expect(figure(plant, /^Least flow/)).toMatchObject({ value: 0, verdict: 'fails' });
  });

  it('holds the seconds in which the margin was below zero, which is what the test is broken off for if it lasts', () => {
    const plant = dipped('pumpChangeOver', { pTank: 100 }, 4);
    expect(newest(plant)).toMatchObject({ endedFor: 'completed', verdict: 'fails' });
    expect(figure(plant, /^Least vacuum margin/)?.value).toBeLessThan(0);
  });

  it('holds the rise of the separator that took the margin with it', () => {
    const plant = dipped('changeOver', { pTank: 100, pSeparator: 95 }, 2);
    expect(newest(plant)).toMatchObject({ endedFor: 'completed', verdict: 'fails' });
    expect(figure(plant, /^Rise/)?.value).toBeCloseTo(63_000, -3);
  });

  it('holds them in a load test too', () => {
    const plant = new Plant(site);
    Object.assign(plant.m1, { ...resting, chips: { p1: 60 } });
    plant.run(70);
    expect(begin(plant, 'loadTest', { minutes: 10 })).toMatchObject({ ok: true });
    confirmUntilMeasured(plant);
    plant.run(680, (second) => (plant.m1.pTank = second === 100 || second === 101 ? 100 : 74));
    expect(newest(plant)).toMatchObject({ endedFor: 'completed', verdict: 'fails' });
    expect(figure(plant, /^Least vacuum margin/)?.value).toBeLessThan(0);
  });

  it('says for how long it was not known, and nothing of that where it was known all the while', () => {
    const unknown = dipped('pumpChangeOver', { flow: null }, 8);
    expect(newest(unknown)).toMatchObject({ endedFor: 'completed' });
    expect(notes(unknown)).toMatch(/The standby pump takes over: Loop flow had no value for [1-5] s/);
    const known = dipped('pumpChangeOver', {}, 2);
    expect(newest(known)).toMatchObject({ verdict: 'passes' });
    expect(notes(known)).not.toContain('had no value');
  });
});
