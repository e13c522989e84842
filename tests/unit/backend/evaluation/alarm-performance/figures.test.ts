import { describe, expect, it } from 'vitest';
import { figures } from '../../../../../backend/src/evaluation/alarm-performance/figures/figures';
import { judgeFigure } from '../../../../../backend/src/evaluation/alarm-performance/judge-figure';
import { mostFrequent } from '../../../../../backend/src/evaluation/alarm-performance/most-frequent';
import { priorityMix } from '../../../../../backend/src/evaluation/alarm-performance/priority-mix';
import { firstOutsOf } from '../../../../../backend/src/evaluation/alarm-performance/flood-first-outs';
import { usualTargets } from '../../../../../backend/src/evaluation/alarm-performance/targets';
import { timeSpreads } from '../../../../../backend/src/evaluation/alarm-performance/time-spreads';
import { handMadeJournal } from './hand-made-journal';
import { dayMs, minuteMs, toldOf } from './steps';

const told = toldOf(handMadeJournal, { fromMs: 0, toMs: 2 * dayMs }, 42);
const judged = new Map(figures.map((row) => [row.id, judgeFigure(row, told, usualTargets)]));

/**
 * Worked out on paper from the story of `hand-made-journal.ts`: two days = 48 h = 288 × 10 min = 2880 min, and
 * 12 (upset) + 3 (chatter) + 1 (fleeting) + 2 (long) = 18 annunciations; the consequence is none.
 */
const onPaper: readonly (readonly [id: string, value: number, verdict: string])[] = [
  ['annunciationsPerDay', 18 / 2, 'within'],
  ['annunciationsPerHour', 18 / 48, 'within'],
  ['annunciationsPerTenMinutes', 18 / 288, 'within'],
  // The busiest hour is [60, 120): 12 of the upset and one at 100 = 13.
  ['hoursOverThirty', 0, 'within'],
  // [60, 70) holds 12, no other more than 10: 1 of 288 = 0.347 %.
  ['tenMinutesOverTen', 100 / 288, 'within'],
  // (55.5, 65.5] holds all twelve.
  ['mostInTenMinutes', 12, 'beyond'],
  // The 11th comes at 65. At 73.5 that of 63.5 leaves: 64, 64.5, 65 and 65.5 are four. 8.5 of 2880 min = 0.295 %.
  ['timeInFlood', (100 * 8.5) / 2880, 'within'],
  // The upset is from its first, 60, to 73.5 = 13.5 min with 12; 6 are left in 2866.5 min.
  ['steadyRate', (10 * 6) / 2866.5, 'within'],
  ['afterAnUpset', 12, 'between'],
  // Fifteen alarms were told once and one three times: 3 + 9 × 1 = 12 of 18.
  ['tenMostFrequentShare', (100 * 12) / 18, 'beyond'],
  ['chatteringAlarms', 1, 'beyond'],
  ['fleetingAlarms', 1, 'beyond'],
  // From 100 to 1600 min: older than 1440 min from 1540 on, on the second day. That of 2000 is 880 min old at the end.
  ['staleOnADay', 1, 'within'],
  // 12 × 20 + 3 × 0.1 + 0.5 + 1500 + 880 = 2620.8 of 2880 min.
  ['standingMean', 2620.8 / 2880, 'within'],
  // All twelve stand from 65.5 to 80.
  ['standingMost', 12, 'beyond'],
  ['unauthorised', 0, 'within'],
  // 0.6 s.
  ['acknowledgedTooFast', 1, 'noTarget'],
  ['foldedConsequences', 1, 'noTarget'],
  ['configuredAlarms', 42, 'noTarget'],
];

describe('the figures of a journal worked out by hand', () => {
  it.each(onPaper)('%s is %d: %s', (id, value, verdict) => {
    expect(judged.get(id)?.value).toBeCloseTo(value, 9);
    expect(judged.get(id)?.verdict).toBe(verdict);
  });

  it('are all of them', () => {
    expect(onPaper.map(([id]) => id).sort()).toEqual([...judged.keys()].sort());
  });

  it('put the alarm that chattered first among the most frequent', () => {
    const [first, second] = mostFrequent(told.annunciations);
    expect(first).toMatchObject({ annunciations: 3, share: (100 * 3) / 18, last: { alarm: 'u9:FLOW-3' } });
    expect(second?.annunciations).toBe(1);
  });

  // 1, 2 and 15 of 18.
  it('have the mix of priorities beside its target', () => {
    expect(priorityMix(told.annunciations)).toEqual([
      { priority: 1, annunciations: 1, share: 100 / 18, target: 5 },
      { priority: 2, annunciations: 2, share: 200 / 18, target: 15 },
      { priority: 3, annunciations: 15, share: 1500 / 18, target: 80 },
    ]);
  });

  /**
   * Priority 3, seen: 0.6 (at 100), 60 (fleeting), nine times 300, 570 (from the last of three told at 600.5 to 610), 600 s =
   * 13 values; the middle one is 300; 0.9 × 12 = 10.8: 300 + 0.8 × (570 − 300) = 516.
   */
  it('have the time to acknowledge by priority', () => {
    const [one, two, three] = timeSpreads(told.annunciations, 'acknowledgedMs');
    expect(one).toEqual({ priority: 1, count: 1, medianSeconds: 300, p90Seconds: 300 });
    expect(two).toMatchObject({ count: 2, medianSeconds: 300 });
    expect(three).toMatchObject({ count: 13, medianSeconds: 300 });
    expect(three?.p90Seconds).toBeCloseTo(516, 6);
  });

  /** Priority 3, gone: three times 6, 30, nine times 1200, 90000 s = 14 values; the middle ones and the 12th and 13th are 1200. */
  it('have the time to clear by priority', () => {
    const [one, , three] = timeSpreads(told.annunciations, 'clearedMs');
    expect(one).toMatchObject({ count: 1, medianSeconds: 1200 });
    expect(three).toMatchObject({ count: 14, medianSeconds: 1200, p90Seconds: 1200 });
  });

  it('tell the flood as one event with its first-outs in order', () => {
    expect(told.floods).toEqual([
      {
        fromMs: 65 * minuteMs,
        toMs: 73.5 * minuteMs,
        firstMs: 60 * minuteMs,
        lastMs: 65.5 * minuteMs,
        annunciations: 12,
        most: 12,
      },
    ]);
    const [flood] = told.floods;
    const alarms = flood === undefined ? [] : firstOutsOf(flood, told.annunciations).map(({ alarm }) => alarm);
    expect(alarms).toEqual(Array.from({ length: 12 }, (_, i) => `u${i + 1}:TSUP-1`));
  });

  it('are null where there is nothing to reckon them from', () => {
    const none = toldOf([], { fromMs: 5, toMs: 5 });
    for (const row of figures.filter(({ id }) => id !== 'configuredAlarms'))
      expect(judgeFigure(row, none, usualTargets).verdict, row.id).toBe('nothing');
  });
});

describe('a period shorter than what a rate is of', () => {
  it('tells no such rate, as half a minute says nothing of a day', () => {
    const short = toldOf(handMadeJournal, { fromMs: 60 * minuteMs, toMs: 60.5 * minuteMs }, 42);
    const of = (id: string) => figures.find((row) => row.id === id)?.of(short);
    expect(short.annunciations.length).toBeGreaterThan(0);
    for (const id of ['annunciationsPerDay', 'annunciationsPerHour', 'annunciationsPerTenMinutes', 'steadyRate'])
      expect(of(id)).toBeNull();
    const hour = toldOf(handMadeJournal, { fromMs: 60 * minuteMs, toMs: 120 * minuteMs }, 42);
    // The busiest hour of above: 13.
    expect(figures.find(({ id }) => id === 'annunciationsPerHour')?.of(hour)).toBeCloseTo(13, 9);
  });
});
