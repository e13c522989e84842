import { isKept } from '../../evaluation/alarm-lifecycle/alarm-record';
import type { AlarmRecord } from '../../evaluation/pipeline/outputs';
import type { SystemEntry, ToldTransition } from '../../ports/alarm-journal';
import { factsOfTransition, factsText } from './journal-facts';
import type { JournalEntry } from './journal-entry';
import { storedNumber, storedText } from './stored-text';

/** A row that says nothing yet. */
export const nothing = {
  cause: null,
  alarm: null,
  unit: null,
  hall: null,
  entry: null,
  fromState: null,
  toState: null,
  priority: null,
  value: null,
  limit: null,
  unitOfMeasure: null,
  place: null,
  foldedUnder: null,
  sinceMs: null,
  actor: null,
  station: null,
  reason: null,
  record: null,
  facts: null,
} as const satisfies Partial<JournalEntry>;

export const recordText = (record: AlarmRecord): string => storedText(JSON.stringify(record));

/** `record`: the alarm as it stands after this transition, or null where a later row of the same batch says it. */
export function transitionEntry(transition: ToldTransition, record: AlarmRecord | null, wallMs: number): JournalEntry {
  return {
    recordedMs: Math.round(wallMs),
    happenedMs: Math.round(transition.atMs),
    kind: transition.actor === null ? 'transition' : 'action',
    cause: transition.cause,
    alarm: storedText(transition.alarm),
    unit: storedText(transition.unit),
    hall: storedText(transition.hall),
    entry: storedText(transition.entry),
    fromState: transition.from,
    toState: transition.to,
    priority: transition.priority,
    value: storedNumber(transition.value),
    limit: storedNumber(transition.limit),
    unitOfMeasure: storedText(transition.unitOfMeasure),
    place: storedText(transition.where),
    foldedUnder: storedText(transition.foldedUnder),
    sinceMs: Math.round(transition.sinceMs),
    actor: storedText(transition.actor),
    station: storedText(transition.station),
    reason: storedText(transition.comment ?? transition.cause),
    record: record === null || !isKept(record) ? null : recordText(record),
    facts: factsText(factsOfTransition(transition)),
  };
}

/** Reason of a row that only says how a standing alarm stands by now. */
export const standingUpdated = 'standing alarm updated';

/** A standing alarm that changed without a change of state, such as one that now folds under another. */
export function recordEntry(record: AlarmRecord, wallMs: number): JournalEntry {
  return {
    ...nothing,
    recordedMs: Math.round(wallMs),
    happenedMs: Math.round(record.stateSinceMs),
    kind: 'system',
    alarm: storedText(record.alarm),
    unit: storedText(record.unit),
    hall: storedText(record.hall),
    entry: storedText(record.entry),
    toState: record.state,
    priority: record.priority,
    foldedUnder: storedText(record.foldedUnder),
    reason: standingUpdated,
    record: isKept(record) ? recordText(record) : null,
  };
}

export function systemEntry(entry: SystemEntry, wallMs: number): JournalEntry {
  return {
    ...nothing,
    recordedMs: Math.round(wallMs),
    happenedMs: Math.round(entry.atMs),
    kind: 'system',
    cause: storedText(entry.cause ?? null),
    actor: storedText(entry.actor),
    reason: storedText(entry.reason),
  };
}
