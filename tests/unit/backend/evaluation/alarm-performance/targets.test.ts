import { describe, expect, it } from 'vitest';
import { chatterCount, chatterWindowMs } from '../../../../../backend/src/evaluation/alarm-performance/chattering';
import { afterAnUpset } from '../../../../../backend/src/evaluation/alarm-performance/figures/after-an-upset';
import { figures } from '../../../../../backend/src/evaluation/alarm-performance/figures/figures';
import { steadyRate } from '../../../../../backend/src/evaluation/alarm-performance/figures/steady-rate';
import { priorityMix } from '../../../../../backend/src/evaluation/alarm-performance/priority-mix';
import { staleAfterMs } from '../../../../../backend/src/evaluation/alarm-performance/stale';
import { readDayTarget, usualTargets } from '../../../../../backend/src/evaluation/alarm-performance/targets';

const targetOf = (id: string): unknown => figures.find((row) => row.id === id)?.target?.(usualTargets);

describe('the targets', () => {
  /** ANSI/ISA-18.2-2009 (metrics table), IEC 62682:2014, EEMUA 191; unauthorised and EEMUA standing from memory. */
  it.each([
    ['al-rate-day', 'annunciationsPerDay', 150, 300, 'atMost'],
    ['al-rate-hour', 'annunciationsPerHour', 6, 12, 'atMost'],
    ['al-rate-10min', 'annunciationsPerTenMinutes', 1, 2, 'atMost'],
    ['al-peak', 'mostInTenMinutes', 10, 10, 'atMost'],
    ['al-flood-time', 'timeInFlood', 1, 1, 'below'],
    ['al-flood-time, hours', 'hoursOverThirty', 1, 1, 'below'],
    ['al-flood-time, periods', 'tenMinutesOverTen', 1, 1, 'below'],
    ['al-top10', 'tenMostFrequentShare', 1, 5, 'atMost'],
    ['al-chatter', 'chatteringAlarms', 0, 0, 'atMost'],
    ['al-chatter, fleeting', 'fleetingAlarms', 0, 0, 'atMost'],
    ['al-stale', 'staleOnADay', 5, 5, 'below'],
    ['al-unauth', 'unauthorised', 0, 0, 'atMost'],
    ['eemua-standing', 'standingMean', 10, 10, 'below'],
  ])('%s: %s', (_check, id, acceptable, limit, bound) => {
    expect(targetOf(id)).toEqual({ acceptable, limit, bound });
  });

  it('are those of the published mix, count and ages (al-prio3, al-chatter, al-stale)', () => {
    expect(priorityMix([]).map(({ target }) => target)).toEqual([5, 15, 80]);
    expect([chatterCount, chatterWindowMs, staleAfterMs]).toEqual([3, 60_000, 24 * 3_600_000]);
  });

  /** EEMUA 191: one in 10, 5, 2 and 1 minutes; the last three from memory (eemua-rate, eemua-rate-bands). */
  it.each([
    [1, 'acceptable'],
    [10 / 5, 'manageable'],
    [10 / 2, 'over-demanding'],
    [10 / 1, 'unacceptable'],
  ])('call a steady rate of %d in ten minutes %s', (rate, band) => {
    expect(steadyRate.band?.(rate)).toBe(band);
  });

  /** EEMUA 191, from memory (eemua-upset): fewer than 10, 20 to 100, more than 100; nothing is said of 10 to 19. */
  it.each([
    [9, 'manageable'],
    [15, 'demanding'],
    [20, 'hard to cope with'],
    [100, 'hard to cope with'],
    [101, 'excessive'],
  ])('call %d after an upset %s', (count, band) => {
    expect(afterAnUpset.band?.(count)).toBe(band);
  });

  /** IEC 62682:2014 prints 144 and 288; the edition of 2016 of ANSI/ISA-18.2 none (al-kpi-2016). */
  it('can be those of another edition', () => {
    expect(readDayTarget('144/288')).toEqual({ ok: true, value: { acceptable: 144, limit: 288 } });
    for (const text of ['', '300/150', '0/10', '150', '150/300/1', 'a/b']) expect(readDayTarget(text).ok).toBe(false);
  });
});
