import { AlarmEntries } from './alarm-entries';
import type { Actor, AlarmFacts, AlarmIdentity } from './alarm-identity';
import type { AlarmRecord, AlarmTransition } from './alarm-record';
import { changeMode, type ModeDetails } from './change-mode';
import { onClockSetBack } from './clock-set-back';
import { describeChange, movedTo, type Change } from './describe-change';
import { inService, isSetAside, modeOf, setAsideOf } from './mode-facts';
import { modeStep } from './mode-step';
import type { ModeEvent, RefusalOfMode } from './mode-table';
import { nextState } from './next-state';
import { refusalWhileSetAside, type RefusalWhileSetAside } from './refusal-while-set-aside';
import { stateFacts } from './states';
import { transition } from './transition';
import type { AlarmEvent, RefusalOfAction } from './transition-table';

export type { Actor, AlarmFacts, AlarmIdentity } from './alarm-identity';

export type BookOutcome =
  | { readonly ok: true; readonly transition: AlarmTransition; readonly record: AlarmRecord }
  | {
      readonly ok: false;
      readonly refusal: RefusalOfAction | RefusalOfMode | RefusalWhileSetAside | 'ACTION_NOT_RECORDED';
      readonly record: AlarmRecord | null;
    };

/** Records what is about to happen; false where it can't, and then it does not happen. */
export type Commit = (transition: AlarmTransition, record: AlarmRecord) => boolean;

const commitNothing: Commit = () => true;

/**
 * A second acknowledgement of a latched alarm resets it, but only so long after the first and after the condition
 * went: sooner it is the same hand twice, or a second operator who has not yet seen the first.
 */
export const resetGuardMs = 10_000;

/** Every alarm that stands or is set aside, by its place in the site's list of alarms (`index`), and what happens to it. */
export class AlarmBook {
  private readonly entries = new AlarmEntries();

  /** The place of an alarm that stands or is set aside; undefined where none of that name does. */
  indexOfName(alarm: string): number | undefined {
    return this.entries.placeOf(alarm);
  }

  /** Null where the alarm is normal and in service. */
  record(index: number): AlarmRecord | null {
    return this.entries.at(index)?.record ?? null;
  }

  /** The same of an alarm that people are told; null where it is set aside. */
  told(index: number): AlarmRecord | null {
    const record = this.record(index);
    return record === null || isSetAside(record) ? null : record;
  }

  indices(): IterableIterator<number> {
    return this.entries.indices();
  }

  /** Alarms that stand and are told. */
  standing(): readonly AlarmRecord[] {
    return this.entries.records().filter((record) => !isSetAside(record));
  }

  /** Alarms that are not told, whatever their state. */
  setAside(): readonly AlarmRecord[] {
    return this.entries.records().filter(isSetAside);
  }

  restore(index: number, identity: AlarmIdentity, record: AlarmRecord): void {
    if (stateFacts[record.state].standing || isSetAside(record)) this.entries.keep(index, identity, record);
  }

  /** Condition came, or got worse. Null where the tables say that nothing happens. */
  raise(
    index: number,
    event: 'conditionTrue' | 'worsened',
    identity: AlarmIdentity,
    facts: AlarmFacts,
    nowMs: number,
  ): AlarmTransition | null {
    const before = this.record(index);
    const from = before?.state ?? 'normal';
    const aside = before === null ? null : setAsideOf(before);
    const step = nextState(from, event, identity.latching, aside !== null);
    if (step === null) return null;
    const record: AlarmRecord = {
      alarm: identity.alarm,
      entry: identity.entry,
      unit: identity.unit,
      hall: identity.hall,
      state: step,
      active: stateFacts[step].active,
      ...facts,
      stateSinceMs: nowMs,
      acknowledgedBy: null,
      acknowledgedAtMs: null,
      ...aside,
    };
    this.entries.keep(index, identity, record);
    return describeChange(from, record, 'conditionTrue', nowMs, null);
  }

  /** Condition went. `cause` says `configuration` where the entry was switched off. */
  clear(index: number, nowMs: number, cause: 'conditionClear' | 'configuration'): AlarmTransition | null {
    const entry = this.entries.at(index);
    if (entry === undefined) return null;
    const { record, identity } = entry;
    const step = nextState(record.state, 'conditionClear', identity.latching, isSetAside(record));
    if (step === null) return null;
    const ended = step === 'normal' && modeOf(record) === 'suppressedByDesign';
    return this.move(index, movedTo(ended ? inService(record) : record, step, cause, nowMs, null));
  }

  /** It was acknowledged so long ago that it is told again. Null where it is not acknowledged, or set aside. */
  reAlarm(index: number, nowMs: number): AlarmTransition | null {
    const entry = this.entries.at(index);
    if (entry === undefined || isSetAside(entry.record)) return null;
    const step = transition(entry.record.state, 'reAlarm', entry.identity.latching);
    if (!step.ok || !step.changed) return null;
    return this.move(index, movedTo(entry.record, step.state, 'reAlarm', nowMs, null));
  }

  /** Says under which first-out the alarm stands now. True where that changed. */
  fold(index: number, foldedUnder: string | null): boolean {
    const entry = this.entries.at(index);
    if (entry === undefined || entry.record.foldedUnder === foldedUnder) return false;
    this.entries.keep(index, entry.identity, { ...entry.record, foldedUnder });
    return true;
  }

  /** Keeps the age of all that is kept, where the clock was set back by `byMs` over a restart. */
  setBack(byMs: number): void {
    for (const index of [...this.entries.indices()]) {
      const entry = this.entries.at(index);
      if (entry !== undefined) this.entries.keep(index, entry.identity, onClockSetBack(entry.record, byMs));
    }
  }

  /** Puts another time in place of those of a shelving: the clock was set back over a restart, nobody knows by how much. */
  retime(index: number, modeSinceMs: number, modeUntilMs: number): void {
    const entry = this.entries.at(index);
    if (entry === undefined || !isSetAside(entry.record)) return;
    this.entries.keep(index, entry.identity, { ...entry.record, modeSinceMs, modeUntilMs });
  }

  acknowledge(alarm: string, actor: Actor, nowMs: number, commit: Commit = commitNothing): BookOutcome {
    const index = this.entries.placeOf(alarm);
    const record = index === undefined ? null : this.told(index);
    if (record?.state === 'latchedAcknowledged' && !isWithinGuard(nowMs - lastTouched(record))) {
      return this.act(alarm, 'reset', actor, nowMs, commit);
    }
    return this.act(alarm, 'acknowledge', actor, nowMs, commit);
  }

  reset(alarm: string, actor: Actor, nowMs: number, commit: Commit = commitNothing): BookOutcome {
    return this.act(alarm, 'reset', actor, nowMs, commit);
  }

  /**
   * Sets an alarm aside or brings it back, by a person or by the program (`actor` null).
   * @param normal the alarm as it is while it is normal and in service; asked only where it is
   * @param suppressed whether logic suppresses it now
   */
  changeMode(
    index: number,
    identity: AlarmIdentity,
    normal: () => AlarmRecord,
    asked: { readonly event: ModeEvent; readonly details: ModeDetails | null; readonly suppressed: boolean },
    nowMs: number,
    actor: Actor | null,
    commit: Commit = commitNothing,
  ): BookOutcome | null {
    const before = this.record(index);
    const step = modeStep(before === null ? 'inService' : modeOf(before), asked.event, asked.suppressed);
    if (!step.ok) return { ok: false, refusal: step.refusal, record: before };
    if (!step.changed || (before === null && step.mode === 'suppressedByDesign')) return null;
    const moved = changeMode(before ?? normal(), step.mode, asked.event, asked.details, nowMs, actor);
    if (!commit(moved.transition, moved.record)) return { ok: false, refusal: 'ACTION_NOT_RECORDED', record: before };
    this.entries.keep(index, identity, moved.record);
    return { ok: true, ...moved };
  }

  private act(
    alarm: string,
    event: Extract<AlarmEvent, 'acknowledge' | 'reset'>,
    actor: Actor,
    nowMs: number,
    commit: Commit,
  ): BookOutcome {
    const index = this.entries.placeOf(alarm);
    const entry = index === undefined ? undefined : this.entries.at(index);
    if (index === undefined || entry === undefined) {
      const closed = this.entries.closedOf(alarm);
      return closed === null || closed.acknowledgedBy === null
        ? { ok: false, refusal: 'ALARM_UNKNOWN', record: null }
        : { ok: false, refusal: 'ALARM_ALREADY_ACKNOWLEDGED', record: closed };
    }
    const { identity, record } = entry;
    const aside = refusalWhileSetAside(modeOf(record));
    if (aside !== null) return { ok: false, refusal: aside, record };
    const step = transition(record.state, event, identity.latching);
    if (!step.ok) return { ok: false, refusal: step.refusal, record };
    const moved = movedTo(record, step.state, event, nowMs, actor);
    if (!commit(moved.transition, moved.record)) return { ok: false, refusal: 'ACTION_NOT_RECORDED', record };
    this.move(index, moved);
    return { ok: true, ...moved };
  }

  private move(index: number, { transition: moved, record }: Change): AlarmTransition {
    const entry = this.entries.at(index);
    if (entry !== undefined) this.entries.keep(index, entry.identity, record);
    return moved;
  }
}

/** What lies ahead is of before the clock was set back: not of this hand, nor of one beside it. */
const isWithinGuard = (agoMs: number): boolean => agoMs >= 0 && agoMs < resetGuardMs;

const lastTouched = (record: AlarmRecord): number => Math.max(record.stateSinceMs, record.acknowledgedAtMs ?? 0);
