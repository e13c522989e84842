import type { Alarm } from '@ebbline/shared/contract/alarm';
import type { SetAsideAlarm } from '@ebbline/shared/contract/alarm-modes';
import type { InjectionKey } from 'vue';
import { inject } from 'vue';
import { CodedError } from '@ebbline/shared/errors/coded-error';
import type { Acting } from '../../state/acting';
import type { Acknowledging } from '../../state/use-acknowledge';
import type { Places } from './use-places';
import type { SetAsideWish } from './set-aside-wish';

/** What every row of the standing list needs; handed down once. */
export interface StandingDesk {
  readonly places: Places;
  readonly acknowledgingOf: (id: string) => Acknowledging;
  readonly acknowledge: (alarm: Alarm, comment: string) => void;
  readonly settingAsideOf: (id: string) => Acting<SetAsideAlarm>;
  readonly setAside: (alarm: Alarm, wish: SetAsideWish) => void;
  /** Whether the grounds of an alarm are closed. */
  readonly isClosed: (id: string) => boolean;
  readonly toggle: (id: string) => void;
  /** Whether what follows from an alarm is shown under it. */
  readonly isUnfolded: (id: string) => boolean;
  readonly unfold: (id: string) => void;
  readonly isSelected: (id: string) => boolean;
  readonly select: (id: string, selected: boolean) => void;
}

export const standingDeskKey: InjectionKey<StandingDesk> = Symbol('standing desk');

export function useStandingDesk(): StandingDesk {
  const desk = inject(standingDeskKey, null);
  if (desk === null)
    throw new CodedError('NO_STANDING_DESK', 'the list gave no desk; provide one under standingDeskKey');
  return desk;
}
