import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { AlarmBook } from '../../backend/src/evaluation/alarm-lifecycle/alarm-book';
import { stateFacts } from '../../backend/src/evaluation/alarm-lifecycle/states';
import { expectedTransitions } from './expected-transitions';
import { facts, identity, person } from './book-of-alarms';

const events = fc.array(
  fc.constantFrom('conditionTrue', 'conditionClear', 'worsened', 'reAlarm', 'acknowledge', 'reset'),
  {
    maxLength: 40,
  },
);

/** Sends one event to the book, a long time after the one before, so that no guard against haste is at work. */
function send(book: AlarmBook, latching: boolean, event: string, nowMs: number): void {
  const who = identity(latching);
  if (event === 'conditionTrue' || event === 'worsened') book.raise(0, event, who, facts(nowMs), nowMs);
  else if (event === 'conditionClear') book.clear(0, nowMs, 'conditionClear');
  else if (event === 'reAlarm') book.reAlarm(0, nowMs);
  else if (event === 'acknowledge') book.acknowledge(who.alarm, person('Ada'), nowMs);
  else book.reset(who.alarm, person('Ada'), nowMs);
}

/** The same by the table written by hand; a further acknowledgement of a latched, acknowledged alarm is its reset. */
function model(state: string, latching: boolean, event: string): string {
  const asked = event === 'acknowledge' && state === 'latchedAcknowledged' ? 'reset' : event;
  const row = expectedTransitions.find((t) => t.from === state && t.event === asked && t.latching === latching);
  return row?.to ?? state;
}

describe('generated paths', () => {
  it('always end where the table written by hand says, step by step', () => {
    fc.assert(
      fc.property(fc.boolean(), events, (latching, path) => {
        const book = new AlarmBook();
        let expected = 'normal';
        path.forEach((event, i) => {
          send(book, latching, event, (i + 1) * 60_000);
          expected = model(expected, latching, event);
          expect(book.record(0)?.state ?? 'normal').toBe(expected);
        });
      }),
    );
  });

  it('keep record and state in step: active as the state says, who and when both or neither', () => {
    fc.assert(
      fc.property(fc.boolean(), events, (latching, path) => {
        const book = new AlarmBook();
        path.forEach((event, i) => {
          send(book, latching, event, (i + 1) * 60_000);
          for (const record of book.standing()) {
            expect(record.active).toBe(stateFacts[record.state].active);
            expect(record.acknowledgedBy === null).toBe(record.acknowledgedAtMs === null);
            expect(record.acknowledgedBy !== null).toBe(stateFacts[record.state].acknowledged);
          }
        });
      }),
    );
  });
});
