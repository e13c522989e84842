import { describe, expect, it } from 'vitest';
import { historyOf, minuteMs, raise, step } from './steps';

const told = (steps: Parameters<typeof historyOf>[0], hall: string | null = null): (string | number)[][] =>
  historyOf(steps, hall).annunciations.map(({ alarm, atMs }) => [alarm, atMs / minuteMs]);

const person = { kind: 'action', cause: 'acknowledge', actor: 'Ada' } as const;

describe('AlarmHistory', () => {
  it('counts passages into unacknowledged, and no other row', () => {
    const steps = [
      raise(1, 'u1:AIR-1'),
      step(2, 'u1:AIR-1', 'unacknowledged', 'acknowledged', person),
      step(3, 'u1:AIR-1', 'acknowledged', 'normal'),
      raise(4, 'u1:AIR-1'),
      step(5, 'u1:AIR-1', 'unacknowledged', 'returnedUnacknowledged'),
      step(6, 'u1:AIR-1', 'returnedUnacknowledged', 'unacknowledged'),
    ];
    expect(told(steps)).toEqual([
      ['u1:AIR-1', 1],
      ['u1:AIR-1', 4],
      ['u1:AIR-1', 6],
    ]);
  });

  it('counts the same condition once more where it got worse', () => {
    const steps = [
      raise(1, 'u1:MARGIN-2'),
      step(2, 'u1:MARGIN-2', 'unacknowledged', 'unacknowledged', { priority: 1 }),
    ];
    expect(told(steps).length).toBe(2);
  });

  it('counts apart what came folded, and counts it as told where it comes out unacknowledged', () => {
    const folded = { foldedUnder: 'u1:AIR-1' };
    const steps = [
      raise(1, 'u1:AIR-1'),
      raise(1, 'u1:FLOW-3', folded),
      raise(2, 'u1:TSUP-1', folded),
      step(3, 'u1:AIR-1', 'unacknowledged', 'acknowledged', person),
      step(5, 'u1:AIR-1', 'acknowledged', 'normal'),
      { ...step(0, 'u1:FLOW-3', 'normal', 'unacknowledged'), kind: 'system' as const, from: null },
    ];
    expect(told(steps)).toEqual([
      ['u1:AIR-1', 1],
      ['u1:FLOW-3', 5],
    ]);
    expect(historyOf(steps).foldedMs).toEqual([minuteMs, 2 * minuteMs]);
  });

  it('counts once what was told before it folded and comes out again', () => {
    const update = { kind: 'system', from: null } as const;
    const steps = [
      raise(1, 'u1:AIR-1'),
      raise(2, 'u1:AIR-4'),
      { ...step(1, 'u1:AIR-1', 'normal', 'unacknowledged', { foldedUnder: 'u1:AIR-4' }), ...update },
      step(3, 'u1:AIR-4', 'unacknowledged', 'acknowledged', person),
      step(4, 'u1:AIR-4', 'acknowledged', 'normal'),
      { ...step(1, 'u1:AIR-1', 'normal', 'unacknowledged'), ...update },
    ];
    expect(told(steps).length).toBe(2);
    expect(historyOf(steps).annunciations[0]?.foldedLater).toBe(true);
  });

  it('counts nothing while an alarm is set aside, and one where it is brought back active', () => {
    const steps = [
      raise(1, 'u1:AIR-2'),
      step(2, 'u1:AIR-2', 'unacknowledged', 'acknowledged', { kind: 'action', actor: 'Ada', mode: 'shelved' }),
      step(3, 'u1:AIR-2', 'acknowledged', 'normal'),
      step(4, 'u1:AIR-2', 'normal', 'acknowledged'),
      step(5, 'u1:AIR-2', 'acknowledged', 'unacknowledged', { cause: 'shelvingOver', mode: 'inService' }),
    ];
    expect(told(steps)).toEqual([
      ['u1:AIR-2', 1],
      ['u1:AIR-2', 5],
    ]);
    const { annunciations, unauthorisedMs } = historyOf(steps);
    expect(unauthorisedMs).toEqual([]);
    // Set aside is not seen, and what went meanwhile was not the end of what had been told.
    expect(annunciations[0]).toMatchObject({ acknowledgedMs: null, clearedMs: null });
  });

  it('knows an alarm that logic suppresses as in service again once its condition has gone', () => {
    const steps = [
      step(1, 'u1:FLOW-1', 'normal', 'acknowledged', { mode: 'suppressedByDesign' }),
      step(2, 'u1:FLOW-1', 'acknowledged', 'normal'),
      raise(3, 'u1:FLOW-1'),
    ];
    expect(told(steps)).toEqual([['u1:FLOW-1', 3]]);
  });

  it('finds who set aside or changed something without a name', () => {
    const nobody = { kind: 'action', actor: null, mode: 'outOfService' } as const;
    const steps = [
      step(1, 'u1:AIR-2', 'normal', 'normal', nobody),
      { ...step(2, 'u1:AIR-2', 'normal', 'normal'), alarm: null, to: null, cause: 'settingChanged', actor: ' ' },
      { ...step(3, 'u1:AIR-2', 'normal', 'normal'), alarm: null, to: null, cause: 'settingChanged', actor: 'Ada' },
    ];
    expect(historyOf(steps).unauthorisedMs).toEqual([minuteMs, 2 * minuteMs]);
  });

  it('keeps to one hall where it is asked to', () => {
    const steps = [
      raise(1, 'u1:AIR-1'),
      raise(2, 'u2:AIR-1', { hall: 'h2' }),
      raise(3, 'program:SYS-1', { hall: null }),
    ];
    expect(told(steps, 'h2')).toEqual([['u2:AIR-1', 2]]);
    expect(told(steps).length).toBe(3);
  });

  it('knows how long an alarm stood that came before the first row', () => {
    const steps = [step(10, 'u1:AIR-2', 'unacknowledged', 'returnedUnacknowledged', { sinceMs: 1000 })];
    expect(historyOf(steps).standings).toMatchObject([{ fromMs: 1000, toMs: 10 * minuteMs }]);
    expect(told(steps)).toEqual([]);
  });

  it('knows when a person saw an alarm and when its condition went', () => {
    const { annunciations } = historyOf([
      raise(1, 'u1:AIR-1'),
      step(2, 'u1:AIR-1', 'unacknowledged', 'returnedUnacknowledged'),
      step(4, 'u1:AIR-1', 'returnedUnacknowledged', 'normal', person),
      raise(5, 'u1:WATER-1'),
      step(6, 'u1:WATER-1', 'unacknowledged', 'acknowledged', person),
      step(8, 'u1:WATER-1', 'acknowledged', 'latchedAcknowledged'),
    ]);
    expect(annunciations.map(({ acknowledgedMs, clearedMs }) => [acknowledgedMs, clearedMs])).toEqual([
      [4 * minuteMs, 2 * minuteMs],
      [6 * minuteMs, 8 * minuteMs],
    ]);
  });
});
