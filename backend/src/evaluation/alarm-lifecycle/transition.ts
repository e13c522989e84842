import type { AlarmState } from '@ebbline/shared/contract/alarm';
import { transitionTable, type AlarmEvent, type RefusalOfAction } from './transition-table';

/** What the surroundings must do about a change of state. */
export type Effect = 'record' | 'annunciate';

export type Step =
  | { readonly ok: true; readonly state: AlarmState; readonly changed: boolean; readonly effects: readonly Effect[] }
  | { readonly ok: false; readonly refusal: RefusalOfAction };

const nothing: readonly Effect[] = [];
const record: readonly Effect[] = ['record'];
const recordAndAnnunciate: readonly Effect[] = ['record', 'annunciate'];

/**
 * The next state of an alarm, and what is to be done about it; does nothing itself.
 * @param latching whether the catalogue entry stays after its condition has gone until a person resets it
 */
export function transition(state: AlarmState, event: AlarmEvent, latching: boolean): Step {
  const cell = transitionTable[state][event];
  if ('refuse' in cell) return { ok: false, refusal: cell.refuse };
  if ('plain' in cell) {
    return { ok: true, state: latching ? cell.latching : cell.plain, changed: true, effects: record };
  }
  if (cell.annunciate) return { ok: true, state: cell.to, changed: true, effects: recordAndAnnunciate };
  const changed = cell.to !== state;
  return { ok: true, state: cell.to, changed, effects: changed ? record : nothing };
}
