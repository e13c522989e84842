import { describe, expect, it } from 'vitest';
import { AlarmBook } from '../../../../../backend/src/evaluation/alarm-lifecycle/alarm-book';
import type { AlarmTexts } from '../../../../../backend/src/evaluation/pipeline/alarm-texts';
import { toAlarm } from '../../../../../backend/src/runner/views/to-alarm';
import { facts, identity, person } from '../../../../alarm-lifecycle/book-of-alarms';

const texts = { title: 't', cause: 'c', consequence: 'c', action: 'a', timeToRespondSeconds: 60 } as AlarmTexts;

describe('an alarm in the words of the contract', () => {
  it('says when it was told, also after it was acknowledged and after it was told anew', () => {
    const book = new AlarmBook();
    const whom = identity(false);
    const told = (): string | undefined => {
      const record = book.record(0);
      return record === null ? undefined : toAlarm({ record, recorded: true }, texts).annunciatedAt;
    };
    book.raise(0, 'conditionTrue', whom, facts(1000), 5000);
    expect(told()).toBe('1970-01-01T00:00:05.000Z');
    book.acknowledge(whom.alarm, person('Ada'), 9000);
    expect(told()).toBe('1970-01-01T00:00:05.000Z');
    book.reAlarm(0, 60_000);
    expect(told()).toBe('1970-01-01T00:01:00.000Z');
    book.acknowledge(whom.alarm, person('Ada'), 70_000);
    expect(told()).toBe('1970-01-01T00:01:00.000Z');
  });
});
