import { alarmStates, type AlarmState } from '@ebbline/shared/contract/alarm';
import { alarmModes } from '@ebbline/shared/contract/alarm-modes';
import { describe, expect, it } from 'vitest';
import { modeStep } from '../../backend/src/evaluation/alarm-lifecycle/mode-step';
import { modeEvents } from '../../backend/src/evaluation/alarm-lifecycle/mode-table';
import { expectedModes } from './expected-modes';
import { bookIn, facts, identity, person } from './book-of-alarms';
import { brought, setAsideBy, shelving } from './set-aside-book';

describe('every mode and event, against what ISA-18.2 and IEC 62682 say', () => {
  it('has a case for each of four modes and seven events, suppressed by logic or not', () => {
    const cases = new Set(expectedModes.map(({ from, event, suppressed }) => `${from} ${event} ${suppressed}`));
    expect(cases.size).toBe(alarmModes.length * modeEvents.length * 2);
  });

  for (const { from, event, suppressed, to, refusal } of expectedModes) {
    const off = suppressed ? ', while logic suppresses it' : '';
    it(`an alarm that is ${from}, on ${event}${off}, ${refusal === null ? `becomes ${to ?? 'nothing new'}` : `answers ${refusal}`}`, () => {
      const expected = refusal === null ? { ok: true, mode: to ?? from, changed: to !== null } : { ok: false, refusal };
      expect(modeStep(from, event, suppressed)).toEqual(expected);
    });
  }
});

/** State of a standing alarm → whether its condition holds, or has latched, as the published tables have it. */
const conditionOf: Readonly<Record<AlarmState, 'gone' | 'holds' | 'latched'>> = {
  normal: 'gone',
  unacknowledged: 'holds',
  acknowledged: 'holds',
  returnedUnacknowledged: 'gone',
  latchedUnacknowledged: 'latched',
  latchedAcknowledged: 'latched',
};
const comesBackAs = { gone: 'normal', holds: 'unacknowledged', latched: 'latchedUnacknowledged' } as const;

describe.each(['shelved', 'suppressedByDesign', 'outOfService'] as const)('an alarm that is %s', (mode) => {
  const bringsBack = {
    shelved: 'unshelve',
    suppressedByDesign: 'unsuppress',
    outOfService: 'returnToService',
  } as const;

  it.each(alarmStates.filter((state) => mode !== 'suppressedByDesign' || conditionOf[state] !== 'gone'))(
    'was %s, is told nothing, and comes back in the state that its condition has',
    (state) => {
      const { book, latching } = bookIn(state);
      setAsideBy(book, latching, mode, 10_000);
      expect(book.standing()).toEqual([]);
      expect(book.setAside()).toMatchObject([{ mode, active: conditionOf[state] === 'holds' }]);
      expect(book.setAside()[0]?.state).not.toMatch(/[uU]nacknowledged/);
      const back = brought(book, latching, bringsBack[mode], 20_000);
      expect(back).toMatchObject({ ok: true, transition: { modeFrom: mode, mode: 'inService', modeSinceMs: 10_000 } });
      expect(book.record(0)?.state ?? 'normal').toBe(comesBackAs[conditionOf[state]]);
      expect(book.setAside()).toEqual([]);
    },
  );

  it('goes on being judged: what came meanwhile is told once as it comes back, what went is not', () => {
    const { book, latching } = bookIn('acknowledged');
    setAsideBy(book, latching, mode, 10_000);
    expect(book.clear(0, 11_000, 'conditionClear')).toMatchObject({ to: 'normal' });
    expect(book.standing()).toEqual([]);
    const again = book.raise(0, 'conditionTrue', identity(latching), facts(12_000), 13_000);
    if (mode === 'suppressedByDesign') {
      expect(again).toMatchObject({ to: 'unacknowledged' });
      return;
    }
    expect(again).toMatchObject({ to: 'acknowledged', mode });
    expect(book.raise(0, 'worsened', identity(latching), facts(12_000, 1), 14_000)).toMatchObject({
      to: 'acknowledged',
      priority: 1,
    });
    brought(book, latching, bringsBack[mode], 20_000);
    expect(book.standing()).toMatchObject([{ state: 'unacknowledged', sinceMs: 12_000, priority: 1 }]);
    expect(book.raise(0, 'conditionTrue', identity(latching), facts(12_000), 21_000)).toBeNull();
  });

  it('latches while it is set aside, and waits to be seen when it comes back', () => {
    const { book, latching } = bookIn('latchedAcknowledged');
    book.raise(0, 'conditionTrue', identity(latching), facts(9000), 9500);
    setAsideBy(book, latching, mode, 10_000);
    expect(book.clear(0, 11_000, 'conditionClear')).toMatchObject({ to: 'latchedAcknowledged' });
    brought(book, latching, bringsBack[mode], 20_000);
    expect(book.standing()).toMatchObject([{ state: 'latchedUnacknowledged' }]);
  });

  it('can be neither acknowledged nor reset, and says why', () => {
    const { book, latching, alarm } = bookIn('unacknowledged');
    setAsideBy(book, latching, mode, 10_000);
    const refusal = {
      shelved: 'ALARM_SHELVED',
      suppressedByDesign: 'ALARM_SUPPRESSED_BY_DESIGN',
      outOfService: 'ALARM_OUT_OF_SERVICE',
    };
    expect(book.acknowledge(alarm, person('Ada'), 20_000)).toMatchObject({ ok: false, refusal: refusal[mode] });
    expect(book.reset(alarm, person('Ada'), 20_000)).toMatchObject({ ok: false, refusal: refusal[mode] });
    expect(book.reAlarm(0, 20_000)).toBeNull();
  });
});

describe('two people at once', () => {
  it('leave one record: the first has shelved the alarm, the second is told who', () => {
    const { book, latching } = bookIn('unacknowledged');
    expect(shelving(book, latching, 'Ada', 10_000)).toMatchObject({ ok: true });
    expect(shelving(book, latching, 'Grace', 10_000)).toMatchObject({
      ok: false,
      refusal: 'ALARM_SHELVED_ALREADY',
      record: { modeBy: 'Ada' },
    });
    expect(book.setAside()).toHaveLength(1);
  });

  it('change nothing where the journal refuses', () => {
    const { book, latching } = bookIn('unacknowledged');
    expect(shelving(book, latching, 'Ada', 10_000, () => false)).toMatchObject({ refusal: 'ACTION_NOT_RECORDED' });
    expect(book.standing()).toMatchObject([{ state: 'unacknowledged' }]);
    expect(book.setAside()).toEqual([]);
  });
});
