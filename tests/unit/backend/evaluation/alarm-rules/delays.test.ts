import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  advanceDelay,
  createDelayState,
  DelayChange,
  restDelay,
} from '../../../../../backend/src/evaluation/alarm-rules/delays';
import { Verdict } from '../../../../../backend/src/evaluation/alarm-rules/verdict';

const { yes, no, hold } = Verdict;

/** Feeds one verdict a second through on-delay 3 s and off-delay 2 s; returns the second of each change. */
function course(verdicts: readonly Verdict[]): { raised: number[]; cleared: number[]; active: boolean } {
  const delays = createDelayState(1);
  const raised: number[] = [];
  const cleared: number[] = [];
  verdicts.forEach((verdict, second) => {
    const change = advanceDelay(delays, 0, verdict, second * 1000, 3000, 2000);
    if (change === DelayChange.raised) raised.push(second);
    if (change === DelayChange.cleared) cleared.push(second);
  });
  return { raised, cleared, active: delays.active[0] === 1 };
}

describe('on-delay and off-delay', () => {
  it('raises when the condition has held for the whole on-delay, not a tick before', () => {
    expect(course([yes, yes, yes]).raised).toEqual([]);
    expect(course([yes, yes, yes, yes]).raised).toEqual([3]);
  });

  it('starts the on-delay anew when the condition was gone', () => {
    expect(course([yes, yes, yes, no, yes, yes, yes]).raised).toEqual([]);
    expect(course([yes, yes, yes, no, yes, yes, yes, yes]).raised).toEqual([7]);
  });

  it('clears when the condition has been gone for the whole off-delay, not a tick before', () => {
    expect(course([yes, yes, yes, yes, no, no]).cleared).toEqual([]);
    expect(course([yes, yes, yes, yes, no, no, no]).cleared).toEqual([6]);
  });

  it('starts the off-delay anew when the condition came back', () => {
    expect(course([yes, yes, yes, yes, no, no, yes, no, no])).toEqual({ raised: [3], cleared: [], active: true });
  });

  it('neither raises nor clears on a bad input, however long', () => {
    expect(course([yes, hold, hold, hold, hold, hold]).raised).toEqual([]);
    expect(course([yes, yes, yes, yes, ...new Array<Verdict>(100).fill(hold)])).toEqual({
      raised: [3],
      cleared: [],
      active: true,
    });
  });

  it('lets an on-delay run on through a bad sample, and an off-delay start anew', () => {
    expect(course([yes, hold, hold, yes]).raised).toEqual([3]);
    expect(course([yes, yes, yes, yes, no, hold, no, no]).cleared).toEqual([]);
    expect(course([yes, yes, yes, yes, no, hold, no, no, no]).cleared).toEqual([8]);
  });

  it('raises at once without an on-delay', () => {
    const delays = createDelayState(2);
    expect(advanceDelay(delays, 1, yes, 0, 0, 0)).toBe(DelayChange.raised);
    expect(advanceDelay(delays, 1, no, 1, 0, 0)).toBe(DelayChange.cleared);
    expect(delays.active[0]).toBe(0);
  });

  it('begins anew where the clock was set back, so that neither delay waits for the old time to come again', () => {
    const delays = createDelayState(1);
    const at = (verdict: Verdict, nowMs: number): DelayChange => advanceDelay(delays, 0, verdict, nowMs, 3000, 2000);
    at(yes, 900_000);
    expect([at(yes, 1000), at(yes, 3000), at(yes, 4000)]).toEqual([
      DelayChange.none,
      DelayChange.none,
      DelayChange.raised,
    ]);
    at(no, 900_000);
    expect([at(no, 5000), at(no, 7000)]).toEqual([DelayChange.none, DelayChange.cleared]);
  });

  it('runs no on-delay of an inactive alarm whose condition is gone, also by the short way that is nearly always taken', () => {
    fc.assert(
      fc.property(fc.array(fc.constantFrom(yes, no, hold), { maxLength: 40 }), (verdicts) => {
        const [whole, short] = [createDelayState(1), createDelayState(1)];
        verdicts.forEach((verdict, second) => {
          advanceDelay(whole, 0, verdict, second * 1000, 3000, 2000);
          if (short.active[0] === 0 && verdict === no) restDelay(short, 0);
          else advanceDelay(short, 0, verdict, second * 1000, 3000, 2000);
          expect([short.active[0], short.trueSinceMs[0]]).toEqual([whole.active[0], whole.trueSinceMs[0]]);
          if (short.active[0] === 0 && verdict === no) expect(short.trueSinceMs[0]).toBeNaN();
        });
      }),
    );
  });

  it('changes by turns, whatever comes', () => {
    fc.assert(
      fc.property(fc.array(fc.constantFrom<Verdict>(yes, no, hold), { maxLength: 60 }), (verdicts) => {
        const { raised, cleared, active } = course(verdicts);
        expect(raised.length - cleared.length).toBe(active ? 1 : 0);
        raised.forEach((second, i) => expect(cleared[i] ?? Number.POSITIVE_INFINITY).toBeGreaterThan(second));
      }),
    );
  });
});
