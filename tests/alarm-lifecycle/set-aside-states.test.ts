import { alarmStates } from '@ebbline/shared/contract/alarm';
import { describe, expect, it } from 'vitest';
import { AlarmBook } from '../../backend/src/evaluation/alarm-lifecycle/alarm-book';
import { nextState } from '../../backend/src/evaluation/alarm-lifecycle/next-state';
import { bookIn, facts, identity } from './book-of-alarms';
import { expectedSettingAside, expectedWhileSetAside } from './expected-set-aside';
import { brought, setAsideBy } from './set-aside-book';

describe('every state of an alarm that is set aside and comes back', () => {
  it('has a case', () => {
    expect(expectedSettingAside.map(({ from }) => from).sort()).toEqual([...alarmStates].sort());
  });

  for (const { from, aside, back } of expectedSettingAside) {
    it(`${from} is ${aside} as it is shelved or taken out, and ${back} as it comes back`, () => {
      for (const [mode, event] of [
        ['shelved', 'unshelve'],
        ['shelved', 'shelvingOver'],
        ['outOfService', 'returnToService'],
      ] as const) {
        const { book, latching } = bookIn(from);
        setAsideBy(book, latching, mode, 10_000);
        expect(book.record(0)).toMatchObject({ mode, state: aside });
        brought(book, latching, event, 20_000);
        expect(book.record(0)?.state ?? 'normal').toBe(back);
      }
    });
  }
});

describe('every state while set aside and every event of the condition', () => {
  it('has a case for three states and three events, plain and latching', () => {
    const cases = new Set(expectedWhileSetAside.map(({ from, event, latching }) => `${from} ${event} ${latching}`));
    expect(cases.size).toBe(18);
  });

  for (const { from, event, latching, to } of expectedWhileSetAside) {
    const alarm = latching ? 'a latching alarm' : 'a plain alarm';
    it(`${alarm} that is ${from}, on ${event}, becomes ${to ?? 'nothing new'}, and is told nothing`, () => {
      // What gets worse while its condition holds keeps its state, and its record is written anew for the higher priority.
      const isRewritten = event === 'worsened' && from === 'acknowledged';
      expect(nextState(from, event, latching, true)).toBe(isRewritten ? 'acknowledged' : to);

      const book = new AlarmBook();
      const who = identity(latching);
      if (from !== 'normal') book.raise(0, 'conditionTrue', who, facts(1000), 2000);
      if (from === 'latchedAcknowledged') book.clear(0, 3000, 'conditionClear');
      setAsideBy(book, latching, 'shelved', 10_000);
      // A plain alarm does not latch: in service it would have gone, and set aside it is then normal.
      if (book.record(0)?.state !== from) return;
      const told =
        event === 'conditionClear'
          ? book.clear(0, 11_000, 'conditionClear')
          : book.raise(0, event, who, facts(11_000, 1), 11_000);
      expect(told === null).toBe(to === null && !isRewritten);
      expect(book.record(0)).toMatchObject({ mode: 'shelved', state: to ?? from });
      expect(book.standing()).toEqual([]);
    });
  }
});
