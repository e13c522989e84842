import { describe, expect, it } from 'vitest';
import { resetGuardMs } from '../../backend/src/evaluation/alarm-lifecycle/alarm-book';
import { bookIn, facts, identity, person } from './book-of-alarms';

describe('two operators at once', () => {
  it('makes the first one the winner and tells the second who and when', () => {
    const { book, alarm } = bookIn('unacknowledged');
    expect(book.acknowledge(alarm, person('Ada'), 5000).ok).toBe(true);
    const second = book.acknowledge(alarm, person('Grace'), 5000);
    expect(second).toMatchObject({
      ok: false,
      refusal: 'ALARM_ALREADY_ACKNOWLEDGED',
      record: { acknowledgedBy: 'Ada', acknowledgedAtMs: 5000 },
    });
    expect(book.standing()).toHaveLength(1);
    expect(book.standing()[0]?.acknowledgedBy).toBe('Ada');
  });

  it('tells the second who and when even where the first ended the alarm', () => {
    const { book, alarm } = bookIn('returnedUnacknowledged');
    expect(book.acknowledge(alarm, person('Ada'), 5000).ok).toBe(true);
    expect(book.standing()).toHaveLength(0);
    expect(book.acknowledge(alarm, person('Grace'), 5001)).toMatchObject({
      ok: false,
      refusal: 'ALARM_ALREADY_ACKNOWLEDGED',
      record: { acknowledgedBy: 'Ada', acknowledgedAtMs: 5000 },
    });
  });

  it('does not let the second one reset a latched alarm that the first has only just acknowledged', () => {
    const { book, alarm } = bookIn('latchedUnacknowledged');
    expect(book.acknowledge(alarm, person('Ada'), 5000).ok).toBe(true);
    expect(book.acknowledge(alarm, person('Grace'), 5000 + resetGuardMs - 1)).toMatchObject({
      ok: false,
      refusal: 'ALARM_ALREADY_ACKNOWLEDGED',
    });
    expect(book.standing()[0]?.state).toBe('latchedAcknowledged');
  });
});

describe('a latched alarm', () => {
  it('leaves by a further acknowledgement once its condition is gone and it was acknowledged', () => {
    const { book, alarm } = bookIn('latchedAcknowledged');
    const outcome = book.acknowledge(alarm, person('Grace'), 4000 + resetGuardMs);
    expect(outcome).toMatchObject({
      ok: true,
      transition: { from: 'latchedAcknowledged', to: 'normal', cause: 'reset', actor: 'Grace' },
    });
    expect(book.standing()).toHaveLength(0);
  });

  it('leaves also where the clock was set back, so that the first acknowledgement seems to lie ahead', () => {
    const { book, alarm } = bookIn('latchedAcknowledged');
    expect(book.acknowledge(alarm, person('Grace'), 4000 - 3_600_000)).toMatchObject({
      ok: true,
      transition: { to: 'normal', cause: 'reset' },
    });
  });

  it('does not leave while its condition holds, however often it is acknowledged', () => {
    const { book, alarm } = bookIn('latchedUnacknowledged');
    book.raise(0, 'conditionTrue', identity(true), facts(9000), 10_000);
    expect(book.acknowledge(alarm, person('Ada'), 20_000).ok).toBe(true);
    expect(book.acknowledge(alarm, person('Ada'), 90_000)).toMatchObject({
      ok: false,
      refusal: 'ALARM_ALREADY_ACKNOWLEDGED',
    });
    expect(book.reset(alarm, person('Ada'), 90_000)).toMatchObject({ ok: false, refusal: 'ALARM_STILL_ACTIVE' });
    expect(book.standing()[0]).toMatchObject({ state: 'acknowledged', active: true });
  });
});

describe('an alarm that returned unacknowledged', () => {
  it('gives one new annunciation when its condition comes again, and forgets nobody’s acknowledgement for it', () => {
    const { book } = bookIn('returnedUnacknowledged');
    const again = book.raise(0, 'conditionTrue', identity(false), facts(8000), 9000);
    expect(again).toMatchObject({ from: 'returnedUnacknowledged', to: 'unacknowledged', sinceMs: 8000, atMs: 9000 });
    expect(book.raise(0, 'conditionTrue', identity(false), facts(8000), 9500)).toBeNull();
    expect(book.standing()[0]?.acknowledgedBy).toBeNull();
  });
});

describe('folding', () => {
  it('marks the record without a change of state', () => {
    const { book } = bookIn('acknowledged');
    const before = book.standing()[0];
    expect(book.fold(0, 'm1:MARGIN-2')).toBe(true);
    expect(book.fold(0, 'm1:MARGIN-2')).toBe(false);
    expect(book.standing()[0]).toEqual({ ...before, foldedUnder: 'm1:MARGIN-2' });
    expect(before?.foldedUnder).toBeNull();
  });
});
