import type { AlarmState } from '@ebbline/shared/contract/alarm';
import type { ConditionEvent } from '../../backend/src/evaluation/alarm-lifecycle/set-aside-table';

/**
 * Written by hand from what ANSI/ISA-18.2-2016 and IEC 62682 say of an alarm that is shelved, suppressed by design or out of service
 * (as retold in the project's reference; clause numbers from memory), not from the program's table: its condition goes on being judged, it
 * is told nothing, and comes back in the state that its condition then has, what holds as unacknowledged.
 * State in service | as it is set aside | as it comes back.
 */
const comingAndGoing = `
normal                 | normal              | normal
unacknowledged         | acknowledged        | unacknowledged
acknowledged           | acknowledged        | unacknowledged
returnedUnacknowledged | normal              | normal
latchedUnacknowledged  | latchedAcknowledged | latchedUnacknowledged
latchedAcknowledged    | latchedAcknowledged | latchedUnacknowledged
`;

/** State while set aside | event | next state of a plain alarm | next state of a latching one. `-` = nothing may change. */
const meanwhile = `
normal              | true  | acknowledged | acknowledged
normal              | clear | -            | -
normal              | worse | -            | -
acknowledged        | true  | -            | -
acknowledged        | clear | normal       | latchedAcknowledged
acknowledged        | worse | -            | -
latchedAcknowledged | true  | acknowledged | acknowledged
latchedAcknowledged | clear | -            | -
latchedAcknowledged | worse | -            | -
`;

const events = { true: 'conditionTrue', clear: 'conditionClear', worse: 'worsened' } as const;

const lines = (table: string): string[][] =>
  table
    .trim()
    .split('\n')
    .map((line) => line.split('|').map((cell) => cell.trim()));

export const expectedSettingAside = lines(comingAndGoing).map(([from = '', aside = '', back = '']) => ({
  from: from as AlarmState,
  aside: aside as AlarmState,
  back: back as AlarmState,
}));

export const expectedWhileSetAside = lines(meanwhile).flatMap(([from = '', event = '', plain = '', latching = '']) =>
  [plain, latching].map((cell, i) => ({
    from: from as AlarmState,
    event: events[event as keyof typeof events] satisfies ConditionEvent,
    latching: i === 1,
    /** Null where the state may not change. */
    to: cell === '-' ? null : (cell as AlarmState),
  })),
);
