import type { AlarmState } from '@ebbline/shared/contract/alarm';
import type { AlarmMode } from '@ebbline/shared/contract/alarm-modes';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { AlarmBook } from '../../backend/src/evaluation/alarm-lifecycle/alarm-book';
import type { AlarmTransition } from '../../backend/src/evaluation/alarm-lifecycle/alarm-record';
import { modeEvents, type ModeEvent } from '../../backend/src/evaluation/alarm-lifecycle/mode-table';
import { fromSnapshot, toSnapshot } from '../../backend/src/evaluation/alarm-lifecycle/snapshot';
import { expectedModes } from './expected-modes';
import { expectedTransitions } from './expected-transitions';
import { facts, identity, person } from './book-of-alarms';
import { change } from './set-aside-book';

const stateEvents = ['conditionTrue', 'conditionClear', 'worsened', 'reAlarm', 'acknowledge', 'reset'] as const;
const paths = fc.array(fc.constantFrom(...stateEvents, ...modeEvents), { maxLength: 60 });

/** Condition and mode as two facts of their own; the state is what the tables written by hand make of them. */
interface Model {
  readonly mode: AlarmMode;
  readonly state: AlarmState;
}

const isAside = (mode: AlarmMode): boolean => mode !== 'inService';

function onState(model: Model, event: string, latching: boolean): Model {
  if (!isAside(model.mode)) {
    const asked = event === 'acknowledge' && model.state === 'latchedAcknowledged' ? 'reset' : event;
    const row = expectedTransitions.find((t) => t.from === model.state && t.event === asked && t.latching === latching);
    return { ...model, state: row?.to ?? model.state };
  }
  if (event === 'conditionTrue') return { ...model, state: 'acknowledged' };
  if (event !== 'conditionClear' || model.state !== 'acknowledged') return model;
  const state = latching ? 'latchedAcknowledged' : 'normal';
  return { mode: model.mode === 'suppressedByDesign' && !latching ? 'inService' : model.mode, state };
}

function onMode(model: Model, event: ModeEvent): Model {
  const row = expectedModes.find((t) => t.from === model.mode && t.event === event && !t.suppressed);
  if (row === undefined || row.to === null) return model;
  const condition = { n: 'normal', h: 'acknowledged', l: 'latchedAcknowledged' } as const;
  const holds = model.state === 'unacknowledged' || model.state === 'acknowledged';
  const aside = condition[model.state.startsWith('latched') ? 'l' : holds ? 'h' : 'n'];
  const mode = row.to === 'suppressedByDesign' && aside === 'normal' ? 'inService' : row.to;
  const back = {
    normal: 'normal',
    acknowledged: 'unacknowledged',
    latchedAcknowledged: 'latchedUnacknowledged',
  } as const;
  // An alarm that is normal is not suppressed anew: there is nothing of it to keep.
  if (row.to === 'suppressedByDesign' && model.state === 'normal' && !isAside(model.mode)) return model;
  return { mode, state: mode === 'inService' ? back[aside] : aside };
}

const isModeEvent = (event: string): event is ModeEvent => (modeEvents as readonly string[]).includes(event);

function send(book: AlarmBook, latching: boolean, event: string, nowMs: number): AlarmTransition | null {
  const who = identity(latching);
  if (isModeEvent(event)) {
    const outcome = change(book, latching, event, nowMs);
    return outcome?.ok === true ? outcome.transition : null;
  }
  if (event === 'conditionTrue' || event === 'worsened') return book.raise(0, event, who, facts(nowMs), nowMs);
  if (event === 'conditionClear') return book.clear(0, nowMs, 'conditionClear');
  if (event === 'reAlarm') return book.reAlarm(0, nowMs);
  const done =
    event === 'acknowledge'
      ? book.acknowledge(who.alarm, person('Ada'), nowMs)
      : book.reset(who.alarm, person('Ada'), nowMs);
  return done.ok ? done.transition : null;
}

/** The same book after a restart. */
function restarted(book: AlarmBook, latching: boolean): AlarmBook {
  const read = fromSnapshot(toSnapshot([...book.standing(), ...book.setAside()]));
  if (!read.ok) throw new Error(read.fault.message);
  const after = new AlarmBook();
  for (const record of read.value) after.restore(0, identity(latching), record);
  return after;
}

describe('generated paths through states and modes', () => {
  it('always end where the tables written by hand say, step by step, over restarts in between', () => {
    fc.assert(
      fc.property(fc.boolean(), paths, fc.nat({ max: 59 }), (latching, path, restartAt) => {
        let book = new AlarmBook();
        let model: Model = { mode: 'inService', state: 'normal' };
        path.forEach((event, i) => {
          if (i === restartAt) book = restarted(book, latching);
          send(book, latching, event, (i + 1) * 60_000);
          model = isModeEvent(event) ? onMode(model, event) : onState(model, event, latching);
          const record = book.record(0);
          expect({ mode: record?.mode ?? 'inService', state: record?.state ?? 'normal' }).toEqual(model);
          expect(book.standing().length + book.setAside().length).toBe(record === null ? 0 : 1);
        });
      }),
      { numRuns: 400 },
    );
  });

  it('never tell an alarm that is set aside, and describe every change as what the record was and is', () => {
    fc.assert(
      fc.property(fc.boolean(), paths, (latching, path) => {
        const book = new AlarmBook();
        path.forEach((event, i) => {
          const before = book.record(0);
          const told = send(book, latching, event, (i + 1) * 60_000);
          if (told === null) {
            expect(book.record(0)).toEqual(before);
            return;
          }
          const after = book.record(0);
          expect(told.from).toBe(before?.state ?? 'normal');
          expect(told.to).toBe(after?.state ?? 'normal');
          expect(told.mode ?? 'inService').toBe(after?.mode ?? 'inService');
          if (told.modeFrom !== undefined) expect(told.modeFrom).toBe(before?.mode ?? 'inService');
          if (told.to === 'unacknowledged') expect(after?.mode).toBeUndefined();
        });
      }),
      { numRuns: 400 },
    );
  });
});
