import type { AlarmState } from '@ebbline/shared/contract/alarm';

/**
 * Written by hand from the state and transition tables of ANSI/ISA-18.2-2016 and IEC 62682 (as retold in the project's
 * reference; clause numbers from memory), not from the program's table. One line a case:
 * state | event | next state of a plain alarm | next state of a latching alarm. `-` = nothing may change,
 * `!CODE` = refused to the person. Events: true, clear, worse (re-alarm as it got
 * worse), again (re-alarm after a time), ack, reset.
 */
const table = `
normal                  | true  | unacknowledged         | unacknowledged
normal                  | clear | -                      | -
normal                  | worse | -                      | -
normal                  | again | -                      | -
normal                  | ack   | !ALARM_UNKNOWN         | !ALARM_UNKNOWN
normal                  | reset | !ALARM_UNKNOWN         | !ALARM_UNKNOWN
unacknowledged          | true  | -                      | -
unacknowledged          | clear | returnedUnacknowledged | latchedUnacknowledged
unacknowledged          | worse | unacknowledged         | unacknowledged
unacknowledged          | again | -                      | -
unacknowledged          | ack   | acknowledged           | acknowledged
unacknowledged          | reset | !ALARM_STILL_ACTIVE    | !ALARM_STILL_ACTIVE
acknowledged            | true  | -                      | -
acknowledged            | clear | normal                 | latchedAcknowledged
acknowledged            | worse | unacknowledged         | unacknowledged
acknowledged            | again | unacknowledged         | unacknowledged
acknowledged            | ack   | !ALARM_ALREADY_ACKNOWLEDGED | !ALARM_ALREADY_ACKNOWLEDGED
acknowledged            | reset | !ALARM_STILL_ACTIVE    | !ALARM_STILL_ACTIVE
returnedUnacknowledged  | true  | unacknowledged         | unacknowledged
returnedUnacknowledged  | clear | -                      | -
returnedUnacknowledged  | worse | -                      | -
returnedUnacknowledged  | again | -                      | -
returnedUnacknowledged  | ack   | normal                 | normal
returnedUnacknowledged  | reset | !ALARM_NOT_LATCHED     | !ALARM_NOT_LATCHED
latchedUnacknowledged   | true  | unacknowledged         | unacknowledged
latchedUnacknowledged   | clear | -                      | -
latchedUnacknowledged   | worse | -                      | -
latchedUnacknowledged   | again | -                      | -
latchedUnacknowledged   | ack   | latchedAcknowledged    | latchedAcknowledged
latchedUnacknowledged   | reset | !ALARM_STILL_ACTIVE    | !ALARM_STILL_ACTIVE
latchedAcknowledged     | true  | unacknowledged         | unacknowledged
latchedAcknowledged     | clear | -                      | -
latchedAcknowledged     | worse | -                      | -
latchedAcknowledged     | again | -                      | -
latchedAcknowledged     | ack   | !ALARM_ALREADY_ACKNOWLEDGED | !ALARM_ALREADY_ACKNOWLEDGED
latchedAcknowledged     | reset | normal                 | normal
`;

const events = {
  true: 'conditionTrue',
  clear: 'conditionClear',
  worse: 'worsened',
  again: 'reAlarm',
  ack: 'acknowledge',
  reset: 'reset',
} as const;

export interface ExpectedTransition {
  readonly from: AlarmState;
  readonly event: (typeof events)[keyof typeof events];
  readonly latching: boolean;
  /** Next state, or null where nothing may change. */
  readonly to: AlarmState | null;
  readonly refusal: string | null;
}

export const expectedTransitions: readonly ExpectedTransition[] = table
  .trim()
  .split('\n')
  .flatMap((line) => {
    const [from = '', event = '', plain = '', latching = ''] = line.split('|').map((cell) => cell.trim());
    return [plain, latching].map((cell, i) => ({
      from: from as AlarmState,
      event: events[event as keyof typeof events],
      latching: i === 1,
      to: cell === '-' || cell.startsWith('!') ? null : (cell as AlarmState),
      refusal: cell.startsWith('!') ? cell.slice(1) : null,
    }));
  });
