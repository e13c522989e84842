import { ManualClock } from '@ebbline/shared/clock/manual-clock';
import { describe, expect, it } from 'vitest';
import { sourceTickClock, wallTickClock } from '../../../../backend/src/runner/tick-clock';

describe('the time in force', () => {
  it('on the wall clock is monotonic time, anchored once: a step of the wall moves nothing', () => {
    let wallMs = Date.UTC(2031, 0, 1);
    let monotonicMs = 5000;
    const clock = wallTickClock({ wallMs: () => wallMs, monotonicMs: () => monotonicMs });
    const start = clock.nowMs();
    expect(start).toBe(Date.UTC(2031, 0, 1));
    wallMs -= 3_600_000;
    monotonicMs += 250;
    expect(clock.nowMs()).toBe(start + 250);
    expect(clock.reach(start + 1e9)).toBe(false);
    expect(clock.nowMs()).toBe(start + 250);
  });

  it('follows a clock that is driven by hand', () => {
    const manual = new ManualClock(1000);
    const clock = wallTickClock(manual);
    manual.advance(20);
    expect(clock.nowMs()).toBe(1020);
  });

  it('on the source clock is the newest source time, and never goes back', () => {
    const clock = sourceTickClock();
    expect(clock.nowMs()).toBeNaN();
    expect([10, 9, 10, Number.NaN, 11].map((ms) => clock.reach(ms))).toEqual([true, false, false, false, true]);
    expect(clock.nowMs()).toBe(11);
  });
});
