import type { AlarmState, Priority } from '@ebbline/shared/contract/alarm';
import type { AlarmRecord, AlarmTransition } from './alarm-record';
import { stateFacts } from './states';
import { transition } from './transition';
import type { AlarmEvent, RefusalOfAction } from './transition-table';

/** Who an alarm is; told once, when it is raised for the first time. */
export interface AlarmIdentity {
  readonly alarm: string;
  readonly entry: string;
  readonly unit: string | null;
  readonly hall: string | null;
  readonly latching: boolean;
}

/** What was seen when the condition changed. */
export interface AlarmFacts {
  readonly priority: Priority;
  readonly sinceMs: number;
  readonly value: number | null;
  readonly limit: number | null;
  readonly unitOfMeasure: string | null;
  readonly where: string | null;
  readonly detail?: string;
  readonly foldedUnder: string | null;
}

export interface Actor {
  readonly operator: string;
  readonly station: string;
  readonly comment: string;
}

export type BookOutcome =
  | { readonly ok: true; readonly transition: AlarmTransition; readonly record: AlarmRecord }
  | {
      readonly ok: false;
      readonly refusal: RefusalOfAction | 'ACTION_NOT_RECORDED';
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

/** So many alarms that went back to normal are remembered, to tell a late second operator who was first. */
const rememberedClosed = 1000;

interface Entry {
  readonly identity: AlarmIdentity;
  readonly record: AlarmRecord;
}

/** Every alarm that stands, by its place in the site's list of alarms (`index`). Records are replaced, never changed. */
export class AlarmBook {
  private readonly entries = new Map<number, Entry>();
  private readonly indexOf = new Map<string, number>();
  private readonly closed = new Map<string, AlarmRecord>();

  /** The place of a standing alarm; undefined where none of that name stands. */
  indexOfName(alarm: string): number | undefined {
    const index = this.indexOf.get(alarm);
    return index !== undefined && this.entries.has(index) ? index : undefined;
  }

  /** Null where the alarm is normal. */
  record(index: number): AlarmRecord | null {
    return this.entries.get(index)?.record ?? null;
  }

  indices(): IterableIterator<number> {
    return this.entries.keys();
  }

  standing(): readonly AlarmRecord[] {
    return [...this.entries.values()].map((entry) => entry.record);
  }

  restore(index: number, identity: AlarmIdentity, record: AlarmRecord): void {
    if (!stateFacts[record.state].standing) return;
    this.entries.set(index, { identity, record });
    this.indexOf.set(identity.alarm, index);
  }

  /** Condition came, or got worse. Null where the table says that nothing happens. */
  raise(
    index: number,
    event: 'conditionTrue' | 'worsened',
    identity: AlarmIdentity,
    facts: AlarmFacts,
    nowMs: number,
  ): AlarmTransition | null {
    const before = this.entries.get(index)?.record ?? null;
    const step = transition(before?.state ?? 'normal', event, identity.latching);
    if (!step.ok || !step.changed) return null;
    const record: AlarmRecord = {
      alarm: identity.alarm,
      entry: identity.entry,
      unit: identity.unit,
      hall: identity.hall,
      state: step.state,
      active: stateFacts[step.state].active,
      ...facts,
      stateSinceMs: nowMs,
      acknowledgedBy: null,
      acknowledgedAtMs: null,
    };
    this.keep(index, identity, record);
    return describe(before?.state ?? 'normal', record, 'conditionTrue', nowMs, null);
  }

  /** Condition went. `cause` says `configuration` where the entry was switched off. */
  clear(index: number, nowMs: number, cause: 'conditionClear' | 'configuration'): AlarmTransition | null {
    const entry = this.entries.get(index);
    if (entry === undefined) return null;
    const step = transition(entry.record.state, 'conditionClear', entry.identity.latching);
    if (!step.ok || !step.changed) return null;
    const moved = movedTo(entry.record, step.state, cause, nowMs, null);
    this.keep(index, entry.identity, moved.record);
    return moved.transition;
  }

  /** Says under which first-out the alarm stands now. True where that changed. */
  fold(index: number, foldedUnder: string | null): boolean {
    const entry = this.entries.get(index);
    if (entry === undefined || entry.record.foldedUnder === foldedUnder) return false;
    this.entries.set(index, { ...entry, record: { ...entry.record, foldedUnder } });
    return true;
  }

  acknowledge(alarm: string, actor: Actor, nowMs: number, commit: Commit = commitNothing): BookOutcome {
    const record = this.find(alarm)?.entry.record;
    if (record?.state === 'latchedAcknowledged' && nowMs - lastTouched(record) >= resetGuardMs) {
      return this.act(alarm, 'reset', actor, nowMs, commit);
    }
    return this.act(alarm, 'acknowledge', actor, nowMs, commit);
  }

  reset(alarm: string, actor: Actor, nowMs: number, commit: Commit = commitNothing): BookOutcome {
    return this.act(alarm, 'reset', actor, nowMs, commit);
  }

  private act(
    alarm: string,
    event: Extract<AlarmEvent, 'acknowledge' | 'reset'>,
    actor: Actor,
    nowMs: number,
    commit: Commit,
  ): BookOutcome {
    const found = this.find(alarm);
    if (found === null) {
      const closed = this.closed.get(alarm) ?? null;
      return closed === null || closed.acknowledgedBy === null
        ? { ok: false, refusal: 'ALARM_UNKNOWN', record: null }
        : { ok: false, refusal: 'ALARM_ALREADY_ACKNOWLEDGED', record: closed };
    }
    const step = transition(found.entry.record.state, event, found.entry.identity.latching);
    if (!step.ok) return { ok: false, refusal: step.refusal, record: found.entry.record };
    const moved = movedTo(found.entry.record, step.state, event, nowMs, actor);
    if (!commit(moved.transition, moved.record)) {
      return { ok: false, refusal: 'ACTION_NOT_RECORDED', record: found.entry.record };
    }
    this.keep(found.index, found.entry.identity, moved.record);
    return { ok: true, ...moved };
  }

  private find(alarm: string): { readonly index: number; readonly entry: Entry } | null {
    const index = this.indexOf.get(alarm);
    const entry = index === undefined ? undefined : this.entries.get(index);
    return index === undefined || entry === undefined ? null : { index, entry };
  }

  private keep(index: number, identity: AlarmIdentity, record: AlarmRecord): void {
    this.closed.delete(identity.alarm);
    if (stateFacts[record.state].standing) {
      this.entries.set(index, { identity, record });
      this.indexOf.set(identity.alarm, index);
      return;
    }
    this.entries.delete(index);
    this.closed.set(identity.alarm, record);
    if (this.closed.size > rememberedClosed) {
      for (const oldest of this.closed.keys()) {
        this.closed.delete(oldest);
        break;
      }
    }
  }
}

/** The alarm in its next state, and the change as the journal has it. */
function movedTo(
  before: AlarmRecord,
  state: AlarmState,
  cause: AlarmTransition['cause'],
  nowMs: number,
  actor: Actor | null,
): { transition: AlarmTransition; record: AlarmRecord } {
  const record: AlarmRecord = {
    ...before,
    state,
    active: stateFacts[state].active,
    stateSinceMs: nowMs,
    ...(cause === 'acknowledge' && actor !== null ? { acknowledgedBy: actor.operator, acknowledgedAtMs: nowMs } : {}),
  };
  return { transition: describe(before.state, record, cause, nowMs, actor), record };
}

const lastTouched = (record: AlarmRecord): number => Math.max(record.stateSinceMs, record.acknowledgedAtMs ?? 0);

function describe(
  from: AlarmState,
  record: AlarmRecord,
  cause: AlarmTransition['cause'],
  atMs: number,
  actor: Actor | null,
): AlarmTransition {
  return {
    alarm: record.alarm,
    entry: record.entry,
    unit: record.unit,
    hall: record.hall,
    from,
    to: record.state,
    cause,
    priority: record.priority,
    atMs,
    sinceMs: record.sinceMs,
    value: record.value,
    limit: record.limit,
    unitOfMeasure: record.unitOfMeasure,
    where: record.where,
    ...(record.detail === undefined ? {} : { detail: record.detail }),
    foldedUnder: record.foldedUnder,
    actor: actor?.operator ?? null,
    station: actor?.station ?? null,
    comment: actor?.comment ?? null,
  };
}
