import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { BackOffBook, mostRemembered } from '../../../../backend/src/access/back-off-book';
import {
  backOffAfter,
  backOffEvents,
  isForgotten,
  noFailures,
  waitAfter,
  waitBefore,
  type BackOff,
} from '../../../../backend/src/access/sign-in-back-off';

const seconds = 1000;
const hours = 3600 * seconds;
const failing = (state: BackOff, times: number, nowMs: number): BackOff => {
  for (let i = 0; i < times; i++) state = backOffAfter(backOffAfter(state, 'begin', nowMs), 'fail', nowMs);
  return state;
};

describe('after failures, a sign-in', () => {
  test.for([
    [1, 0],
    [4, 0],
    [5, 30],
    [6, 60],
    [7, 120],
    [8, 240],
    [9, 480],
    [10, 900],
    [1000, 900],
  ])('waits: %d times, %d s', ([failures = 0, waitS = 0]) => {
    expect(waitAfter(failures)).toBe(waitS * seconds);
    expect(waitBefore(failing(noFailures, failures, 7), 7)).toBe(waitS * seconds);
    expect(waitBefore(failing(noFailures, failures, 7), 7 + waitS * seconds)).toBe(0);
  });

  test('is forgiven by one that succeeds, and forgotten after a day', () => {
    const failed = failing(noFailures, 12, 0);
    const succeeded = backOffAfter(backOffAfter(failed, 'begin', hours), 'succeed', hours);
    expect(isForgotten(succeeded, hours)).toBe(true);
    expect(isForgotten(failed, 24 * hours - 1)).toBe(false);
    expect(isForgotten(failed, 24 * hours)).toBe(true);
    expect(failing(failed, 1, 24 * hours).failures).toBe(1);
  });

  test('is taken at once as often as failures are left, and then one after the other', () => {
    const begun = [1, 2, 3].reduce((state) => backOffAfter(state, 'begin', 0), failing(noFailures, 2, 0));
    expect(waitBefore(begun, 0)).toBe(1000);
    expect(waitBefore(backOffAfter(begun, 'abandon', 0), 0)).toBe(0);
    const late = failing(noFailures, 9, 0);
    expect(waitBefore(late, hours)).toBe(0);
    expect(waitBefore(backOffAfter(late, 'begin', hours), hours)).toBe(1000);
  });
});

describe('whatever happens, the back-off', () => {
  const step = fc.record({
    event: fc.constantFrom(...backOffEvents),
    afterMs: fc.integer({ min: 0, max: 30 * hours }),
  });

  test('never waits longer than a quarter of an hour, never counts below nothing, and locks nobody for good', () => {
    fc.assert(
      fc.property(fc.array(step, { maxLength: 60 }), (steps) => {
        let state = noFailures;
        let nowMs = 0;
        for (const { event, afterMs } of steps) {
          nowMs += afterMs;
          state = backOffAfter(state, event, nowMs);
          expect(state.failures).toBeGreaterThanOrEqual(0);
          expect(state.inFlight).toBeGreaterThanOrEqual(0);
          expect(waitBefore(state, nowMs)).toBeLessThanOrEqual(900 * seconds);
          expect(waitBefore({ ...state, inFlight: 0 }, nowMs + 900 * seconds)).toBe(0);
        }
      }),
    );
  });

  test('lets about a hundred wrong passwords through in a day, however they are spread', () => {
    // From 5 failures on each costs a wait; the fastest who guesses comes as each wait ends: 30, 60, 120, 240, 480 s, then every 900 s.
    const most = 5 + 5 + Math.ceil((86_400 - 930) / 900);
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 1200 }), { minLength: 300, maxLength: 300 }), (gaps) => {
        let state = noFailures;
        let taken = 0;
        let nowMs = 0;
        for (const gap of gaps) {
          nowMs += gap * seconds;
          if (nowMs > 24 * hours || waitBefore(state, nowMs) > 0) continue;
          state = failing(state, 1, nowMs);
          taken++;
        }
        expect(taken).toBeLessThanOrEqual(most);
      }),
      { numRuns: 200 },
    );
  });
});

describe('the book of failures', () => {
  test('holds back a name whatever the station, and a station whatever the name', () => {
    const book = new BackOffBook();
    for (let i = 0; i < 5; i++) {
      book.note(['name ada', `station ${i}`], 'begin', 0);
      book.note(['name ada', `station ${i}`], 'fail', 0);
    }
    expect(book.waitMs(['name ada', 'station 9'], 0)).toBe(30 * seconds);
    expect(book.waitMs(['name ida', 'station 0'], 0)).toBe(0);
  });

  test('remembers a bounded number, and forgets first what was quiet for longest', () => {
    const book = new BackOffBook();
    for (let i = 0; i < mostRemembered + 50; i++) book.note([`name ${i}`], 'fail', i);
    expect(book.size).toBe(mostRemembered);
    expect(book.failures('name 49')).toBe(0);
    expect(book.failures('name 50')).toBe(1);
  });

  test('keeps nothing of who signed in', () => {
    const book = new BackOffBook();
    for (const event of ['begin', 'fail', 'begin', 'succeed'] as const) book.note(['name ada'], event, 0);
    expect(book.size).toBe(0);
  });
});
