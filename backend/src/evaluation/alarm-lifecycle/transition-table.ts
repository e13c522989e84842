import type { AlarmState } from '@ebbline/shared/contract/alarm';

/**
 * What can happen to an alarm. `worsened`: the same condition now asks for a higher priority, or has
 * come to a further place. `reAlarm`: it was acknowledged so long ago that it is to be told again, where that is set.
 */
export type AlarmEvent = 'conditionTrue' | 'conditionClear' | 'worsened' | 'reAlarm' | 'acknowledge' | 'reset';

export type RefusalOfAction =
  'ALARM_UNKNOWN' | 'ALARM_ALREADY_ACKNOWLEDGED' | 'ALARM_NOT_LATCHED' | 'ALARM_STILL_ACTIVE';

/** Where an event leads: a state (its own = nothing happens), by latching or not, or a refusal told to who acted. */
export type Cell =
  | { readonly to: AlarmState; readonly annunciate?: true }
  | { readonly plain: AlarmState; readonly latching: AlarmState }
  | { readonly refuse: RefusalOfAction };

const stay = (to: AlarmState): Cell => ({ to });
const to = stay;
const annunciate: Cell = { to: 'unacknowledged', annunciate: true };
const by = (plain: AlarmState, latching: AlarmState): Cell => ({ plain, latching });
const refuse = (code: RefusalOfAction): Cell => ({ refuse: code });

/**
 * State × event → state: the whole truth. Rows after the transition table of ANSI/ISA-18.2-2016 clause 5.5 and
 * IEC 62682 (clause number from memory). An annunciation is a passage into `unacknowledged`: a new sound, counted once.
 * `reset` of an alarm that is latched but not yet acknowledged is refused as if it were active: seen comes first.
 * `worsened` from `acknowledged` is the designed re-alarm: what was seen was less than what is now so.
 */
export const transitionTable: Readonly<Record<AlarmState, Readonly<Record<AlarmEvent, Cell>>>> = {
  normal: {
    conditionTrue: annunciate,
    conditionClear: stay('normal'),
    worsened: stay('normal'),
    reAlarm: stay('normal'),
    acknowledge: refuse('ALARM_UNKNOWN'),
    reset: refuse('ALARM_UNKNOWN'),
  },
  unacknowledged: {
    conditionTrue: stay('unacknowledged'),
    conditionClear: by('returnedUnacknowledged', 'latchedUnacknowledged'),
    worsened: annunciate,
    reAlarm: stay('unacknowledged'),
    acknowledge: to('acknowledged'),
    reset: refuse('ALARM_STILL_ACTIVE'),
  },
  acknowledged: {
    conditionTrue: stay('acknowledged'),
    conditionClear: by('normal', 'latchedAcknowledged'),
    worsened: annunciate,
    reAlarm: annunciate,
    acknowledge: refuse('ALARM_ALREADY_ACKNOWLEDGED'),
    reset: refuse('ALARM_STILL_ACTIVE'),
  },
  returnedUnacknowledged: {
    conditionTrue: annunciate,
    conditionClear: stay('returnedUnacknowledged'),
    worsened: stay('returnedUnacknowledged'),
    reAlarm: stay('returnedUnacknowledged'),
    acknowledge: to('normal'),
    reset: refuse('ALARM_NOT_LATCHED'),
  },
  latchedUnacknowledged: {
    conditionTrue: annunciate,
    conditionClear: stay('latchedUnacknowledged'),
    worsened: stay('latchedUnacknowledged'),
    reAlarm: stay('latchedUnacknowledged'),
    acknowledge: to('latchedAcknowledged'),
    reset: refuse('ALARM_STILL_ACTIVE'),
  },
  latchedAcknowledged: {
    conditionTrue: annunciate,
    conditionClear: stay('latchedAcknowledged'),
    worsened: stay('latchedAcknowledged'),
    reAlarm: stay('latchedAcknowledged'),
    acknowledge: refuse('ALARM_ALREADY_ACKNOWLEDGED'),
    reset: to('normal'),
  },
};
