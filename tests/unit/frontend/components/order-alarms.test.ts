import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { orderAlarms } from '../../../../frontend/src/components/order-alarms';
import { anAlarm } from '../../../screens/fixtures/builders';

const ids = (alarms: Parameters<typeof orderAlarms>[0]): string[] => orderAlarms(alarms).map(({ alarm }) => alarm.id);

describe('the order of standing alarms', () => {
  it('is by priority, then who waits for an answer, then the one that stands longest', () => {
    const late = '2026-03-01T11:59:00.000Z';
    expect(
      ids([
        anAlarm('third', { priority: 3 }),
        anAlarm('seen', { priority: 1, state: 'acknowledged' }),
        anAlarm('young', { priority: 1, since: late }),
        anAlarm('first', { priority: 1 }),
      ]),
    ).toEqual(['first', 'young', 'seen', 'third']);
  });

  it('puts what follows under its first-out', () => {
    const [group] = orderAlarms([anAlarm('b', { foldedUnder: 'a' }), anAlarm('a')]);
    expect(group?.alarm.id).toBe('a');
    expect(group?.folded.map(({ id }) => id)).toEqual(['b']);
  });

  it('lends a group the rank of its worst follower', () => {
    const alarms = [
      anAlarm('plain', { priority: 2 }),
      anAlarm('head', { priority: 3 }),
      anAlarm('tail', { priority: 1, foldedUnder: 'head' }),
    ];
    expect(ids(alarms)).toEqual(['head', 'plain']);
  });

  it('lets a follower stand alone when its first-out is gone', () => {
    expect(ids([anAlarm('b', { foldedUnder: 'gone' })])).toEqual(['b']);
  });

  it('shows every alarm once, however they fold', () => {
    const some = fc.array(fc.tuple(fc.nat(9), fc.option(fc.nat(9))), { maxLength: 10 });
    fc.assert(
      fc.property(some, (rows) => {
        const alarms = [
          ...new Map(
            rows.map(([id, under]) => [id, anAlarm(`${id}`, { foldedUnder: under === null ? null : `${under}` })]),
          ).values(),
        ];
        const shown = orderAlarms(alarms).flatMap(({ alarm, folded }) => [alarm.id, ...folded.map((one) => one.id)]);
        expect([...shown].sort()).toEqual(alarms.map(({ id }) => id).sort());
      }),
    );
  });
});
