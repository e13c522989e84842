import type { DemoState } from '@ebbline/shared/contract/demo-faults';
import { describe, expect, it } from 'vitest';
import { DemoDurations } from '../../../../../backend/src/connections/mqtt-intake/demo-durations';

type Active = DemoState['active'][number];
const active = (more: Partial<Active> = {}): Active => ({
  id: 'cutServerHose',
  unit: 'N3',
  branch: 'r5',
  forSeconds: 0,
  repaired: false,
  strength: 1,
  keys: {},
  ...more,
});
const secondsAt = (durations: DemoDurations, told: readonly Active[], nowMs: number): number[] =>
  durations.at(told, nowMs).map(({ forSeconds }) => forSeconds);

describe('how long a fault of the demo goes on', () => {
  it('grows while the simulator has nothing new to say', () => {
    const durations = new DemoDurations();
    durations.hear([active()], 1000);
    expect(secondsAt(durations, [active()], 1000)).toEqual([0]);
    expect(secondsAt(durations, [active()], 91_000)).toEqual([90]);
  });

  it('is what the simulator says where it says it', () => {
    const durations = new DemoDurations();
    durations.hear([active({ forSeconds: 600 })], 5000);
    expect(secondsAt(durations, [active()], 7000)).toEqual([602]);
  });

  it('goes on for what is told without a duration, as when something else begins beside it', () => {
    const durations = new DemoDurations();
    const hose = active({ id: 'openHose' });
    durations.hear([hose], 0);
    durations.hear([hose, active()], 60_000);
    expect(secondsAt(durations, [hose, active()], 61_000)).toEqual([61, 1]);
  });

  it('begins anew for what was repaired or gone, and then comes again', () => {
    const durations = new DemoDurations();
    durations.hear([active()], 0);
    durations.hear([active({ repaired: true })], 10_000);
    durations.hear([active()], 20_000);
    expect(secondsAt(durations, [active()], 21_000)).toEqual([1]);
    durations.hear([], 30_000);
    durations.hear([active()], 40_000);
    expect(secondsAt(durations, [active()], 41_000)).toEqual([1]);
  });
});
