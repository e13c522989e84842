import type { AlarmBook, BookOutcome, Commit } from '../../backend/src/evaluation/alarm-lifecycle/alarm-book';
import type { AlarmRecord } from '../../backend/src/evaluation/alarm-lifecycle/alarm-record';
import type { ModeDetails } from '../../backend/src/evaluation/alarm-lifecycle/change-mode';
import type { ModeEvent } from '../../backend/src/evaluation/alarm-lifecycle/mode-table';
import { identity, person } from './book-of-alarms';

/** The alarm of `book-of-alarms` as it is while nothing is known of it. */
export function normal(latching: boolean, nowMs: number): AlarmRecord {
  const { alarm, entry, unit, hall } = identity(latching);
  const nothing = { value: null, limit: null, unitOfMeasure: null, where: null, foldedUnder: null };
  const unseen = { acknowledgedBy: null, acknowledgedAtMs: null };
  const still = { state: 'normal', active: false, priority: 2, sinceMs: nowMs, stateSinceMs: nowMs } as const;
  return { alarm, entry, unit, hall, ...still, ...nothing, ...unseen };
}

const hourMs = 3_600_000;

/** What is said of a mode, by the event that leads to it. */
export const detailsOf = (event: ModeEvent, nowMs: number): ModeDetails | null => {
  const said = { modeBy: 'Ada', modeReason: 'because' };
  if (event === 'shelve') return { ...said, modeUntilMs: nowMs + hourMs, interimMeasures: null };
  if (event === 'takeOut') return { ...said, modeUntilMs: null, interimMeasures: 'a round every hour' };
  return event === 'suppress' ? { modeBy: null, modeReason: 'off', modeUntilMs: null, interimMeasures: null } : null;
};

/** Sends an event of the mode; by a person where only a person can. */
export function change(
  book: AlarmBook,
  latching: boolean,
  event: ModeEvent,
  nowMs: number,
  commit?: Commit,
): BookOutcome | null {
  const byPerson = !['shelvingOver', 'suppress', 'unsuppress'].includes(event);
  const asked = { event, details: detailsOf(event, nowMs), suppressed: false };
  const actor = byPerson ? person('Ada') : null;
  return book.changeMode(0, identity(latching), () => normal(latching, nowMs), asked, nowMs, actor, commit);
}

const leadsTo = { shelved: 'shelve', suppressedByDesign: 'suppress', outOfService: 'takeOut' } as const;

export const setAsideBy = (book: AlarmBook, latching: boolean, mode: keyof typeof leadsTo, nowMs: number) =>
  change(book, latching, leadsTo[mode], nowMs);

export const brought = change;

/** Shelved for an hour by someone. */
export function shelving(
  book: AlarmBook,
  latching: boolean,
  operator: string,
  nowMs: number,
  commit?: Commit,
): BookOutcome | null {
  const details = { modeBy: operator, modeReason: 'because', modeUntilMs: nowMs + hourMs, interimMeasures: null };
  const asked = { event: 'shelve', details, suppressed: false } as const;
  return book.changeMode(0, identity(latching), () => normal(latching, nowMs), asked, nowMs, person(operator), commit);
}
