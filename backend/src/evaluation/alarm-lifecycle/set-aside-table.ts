import type { AlarmState } from '@ebbline/shared/contract/alarm';

/**
 * The states of an alarm that is set aside. Its condition goes on being judged; nothing of it waits for a person, so it is
 * as acknowledged, without anyone having said "seen", and no passage into `unacknowledged` is told or counted.
 */
export type SetAsideState = Extract<AlarmState, 'normal' | 'acknowledged' | 'latchedAcknowledged'>;

/** State in service → state as it is set aside. */
export const settingAside: Readonly<Record<AlarmState, SetAsideState>> = {
  normal: 'normal',
  unacknowledged: 'acknowledged',
  acknowledged: 'acknowledged',
  returnedUnacknowledged: 'normal',
  latchedUnacknowledged: 'latchedAcknowledged',
  latchedAcknowledged: 'latchedAcknowledged',
};

export type ConditionEvent = 'conditionTrue' | 'worsened' | 'conditionClear';

/** State × event while set aside: by whether the alarm latches; its own = nothing happens. */
export const whileSetAside: Readonly<
  Record<
    SetAsideState,
    Readonly<Record<ConditionEvent, { readonly plain: SetAsideState; readonly latching: SetAsideState }>>
  >
> = {
  normal: {
    conditionTrue: { plain: 'acknowledged', latching: 'acknowledged' },
    worsened: { plain: 'normal', latching: 'normal' },
    conditionClear: { plain: 'normal', latching: 'normal' },
  },
  acknowledged: {
    conditionTrue: { plain: 'acknowledged', latching: 'acknowledged' },
    worsened: { plain: 'acknowledged', latching: 'acknowledged' },
    conditionClear: { plain: 'normal', latching: 'latchedAcknowledged' },
  },
  latchedAcknowledged: {
    conditionTrue: { plain: 'acknowledged', latching: 'acknowledged' },
    worsened: { plain: 'latchedAcknowledged', latching: 'latchedAcknowledged' },
    conditionClear: { plain: 'latchedAcknowledged', latching: 'latchedAcknowledged' },
  },
};

/**
 * State while set aside → state as it is told again: the one that the condition then has. What holds is asked for anew,
 * once, whoever may have seen it before; what latched meanwhile waits to be seen.
 */
export const bringingBack: Readonly<Record<SetAsideState, AlarmState>> = {
  normal: 'normal',
  acknowledged: 'unacknowledged',
  latchedAcknowledged: 'latchedUnacknowledged',
};
