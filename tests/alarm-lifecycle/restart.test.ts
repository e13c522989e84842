import { alarmStates } from '@ebbline/shared/contract/alarm';
import { describe, expect, it } from 'vitest';
import { AlarmBook } from '../../backend/src/evaluation/alarm-lifecycle/alarm-book';
import { fromSnapshot, toSnapshot } from '../../backend/src/evaluation/alarm-lifecycle/snapshot';
import { bookIn, facts, identity, person } from './book-of-alarms';

describe('a restart through JSON', () => {
  for (const state of alarmStates) {
    it(`gives back an alarm that is ${state} as it was, and goes on from there`, () => {
      const { book, latching, alarm } = bookIn(state);
      const restored = fromSnapshot(toSnapshot(book.standing()));
      if (!restored.ok) throw new Error(restored.fault.message);
      const after = new AlarmBook();
      for (const record of restored.value) after.restore(0, identity(latching), record);

      expect(after.standing()).toEqual(book.standing());
      expect(after.standing().map((record) => record.state)).toEqual(state === 'normal' ? [] : [state]);
      for (const both of [
        (one: AlarmBook) => one.acknowledge(alarm, person('Grace'), 60_000),
        (one: AlarmBook) => one.raise(0, 'conditionTrue', identity(latching), facts(61_000), 62_000),
        (one: AlarmBook) => one.clear(0, 63_000, 'conditionClear'),
        (one: AlarmBook) => one.standing(),
      ]) {
        expect(both(after)).toEqual(both(book));
      }
    });
  }

  it.each([
    ['not JSON', '{'],
    ['not a list', '{}'],
    ['an unknown state', JSON.stringify([{ ...bookIn('acknowledged').book.standing()[0], state: 'asleep' }])],
    [
      'an active flag against its state',
      JSON.stringify([{ ...bookIn('acknowledged').book.standing()[0], active: false }]),
    ],
    ['a priority that there is not', JSON.stringify([{ ...bookIn('acknowledged').book.standing()[0], priority: 4 }])],
  ])('refuses %s whole', (_what, text) => {
    const restored = fromSnapshot(text);
    expect(restored.ok).toBe(false);
    if (!restored.ok) expect(restored.fault.code).toBe('SNAPSHOT_MALFORMED');
  });
});
