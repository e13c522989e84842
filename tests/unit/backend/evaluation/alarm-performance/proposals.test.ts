import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { burstsOf } from '../../../../../backend/src/evaluation/alarm-performance/chattering';
import { deadbandOver } from '../../../../../backend/src/evaluation/alarm-performance/proposals/deadband';
import { offDelayOver, pausesOf } from '../../../../../backend/src/evaluation/alarm-performance/proposals/off-delay';
import { onDelayOver } from '../../../../../backend/src/evaluation/alarm-performance/proposals/on-delay';
import { historyOf, raise, step } from './steps';

/** Told at 0, 20 and 40 s, each time gone after 5 s. */
const chatter = [
  raise(0, 'u1:DEW-1'),
  step(5 / 60, 'u1:DEW-1', 'unacknowledged', 'returnedUnacknowledged'),
  step(20 / 60, 'u1:DEW-1', 'returnedUnacknowledged', 'unacknowledged'),
  step(25 / 60, 'u1:DEW-1', 'unacknowledged', 'returnedUnacknowledged'),
  step(40 / 60, 'u1:DEW-1', 'returnedUnacknowledged', 'unacknowledged'),
];

describe('the off-delay for an alarm that chatters', () => {
  /**
   * On paper, with an on-delay of 3 s and an off-delay of 2 s: cleared at 5 s, so the condition went at 3 s; told again at 20 s, so it
   * came back at 17 s: gone for 14 s. 15 s is the next whole second that outlasts it.
   */
  it('outlasts the longest pause of the condition itself, by the present delays', () => {
    const [burst] = burstsOf(historyOf(chatter).annunciations);
    if (burst === undefined) throw new Error('three within 60 s are a spell');
    const pauses = pausesOf(burst, { onDelayMs: 3000, offDelayMs: 2000 });
    expect(pauses).toEqual([
      { fromMs: 3000, toMs: 17_000 },
      { fromMs: 23_000, toMs: 37_000 },
    ]);
    expect(offDelayOver(pauses)).toEqual({ offDelayMs: 15_000, longestMs: 14_000 });
  });

  it('is always longer than each pause, and never by more than a second', () => {
    const pause = fc.tuple(fc.integer({ min: 0, max: 1e6 }), fc.integer({ min: 1, max: 500_000 }));
    fc.assert(
      fc.property(fc.array(pause, { minLength: 1 }), (list) => {
        const lengths = list.map(([, ms]) => ms);
        const found = offDelayOver(list.map(([fromMs, ms]) => ({ fromMs, toMs: fromMs + ms })));
        expect(found?.offDelayMs).toBeGreaterThan(Math.max(...lengths));
        expect(found?.offDelayMs).toBeLessThanOrEqual(Math.max(...lengths) + 1000);
      }),
    );
  });

  it('is found over a month of chattering too', () => {
    const pauses = Array.from({ length: 200_000 }, (_, i) => ({ fromMs: 20_000 * i, toMs: 20_000 * i + 9000 }));
    expect(offDelayOver(pauses)).toEqual({ offDelayMs: 10_000, longestMs: 9000 });
  });

  it('is none where it had to be longer than ten minutes, or there is no pause', () => {
    expect(offDelayOver([{ fromMs: 0, toMs: 600_000 }])).toBeNull();
    expect(offDelayOver([])).toBeNull();
  });
});

describe('the on-delay for an alarm that is gone before anyone could act', () => {
  const gone = (seconds: number) =>
    historyOf([raise(0, 'u1:AIR-2'), step(seconds / 60, 'u1:AIR-2', 'unacknowledged', 'returnedUnacknowledged')])
      .annunciations;

  /** On paper: told for 12 s with an on-delay of 2 s and an off-delay of 4 s, so the condition lasted 12 − 4 + 2 = 10 s: 11 s. */
  it('outlasts the condition by the present delays', () => {
    const found = onDelayOver(gone(12), { onDelayMs: 2000, offDelayMs: 4000 }, 600_000);
    expect(found).toEqual({ onDelayMs: 11_000, spared: 1, of: 1, longestMs: 10_000 });
  });

  /** A quarter of 60 s is 15 s: 10 and 14 s fit in (14 + 1 = 15), 20 s does not. */
  it('leaves three quarters of the time to respond, and says how many it spares', () => {
    const all = [...gone(10), ...gone(14), ...gone(20)];
    const found = onDelayOver(all, { onDelayMs: 0, offDelayMs: 0 }, 60_000);
    expect(found).toEqual({ onDelayMs: 15_000, spared: 2, of: 3, longestMs: 14_000 });
    expect(onDelayOver(gone(20), { onDelayMs: 0, offDelayMs: 0 }, 60_000)).toBeNull();
  });
});

describe('the deadband for an alarm that chatters', () => {
  /** Below 5000 Pa in alarm; it came back to 5060 at most: 60 Pa past the limit, a tenth more is 66. */
  it('is a tenth more than the value came back past the limit', () => {
    const values = [5010, 5060, Number.NaN, 5030];
    expect(deadbandOver({ side: 'below', limit: 5000, deadband: 50, values })).toEqual({ deadband: 66, wayBack: 60 });
    expect(deadbandOver({ side: 'above', limit: 45, deadband: 0.5, values: [44.2] })).toMatchObject({ deadband: 0.88 });
  });

  /** Five times 50 is 250 and 5 % of 5000 is 250: a way back of 240 asks for 270 in two figures. */
  it('is none where a delay is the better cure, where nothing is known, or where the present one is as wide', () => {
    const below = { side: 'below', limit: 5000, deadband: 50 } as const;
    expect(deadbandOver({ ...below, values: [5240] })).toBeNull();
    expect(deadbandOver({ ...below, values: [5220] })).toMatchObject({ deadband: 250 });
    expect(deadbandOver({ ...below, values: [Number.NaN] })).toBeNull();
    expect(deadbandOver({ ...below, values: [5040] })).toBeNull();
  });
});
