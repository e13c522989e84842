import type { SetAsideAlarm } from '@ebbline/shared/contract/alarm-modes';
import type { BroughtBack } from '@ebbline/shared/contract/brought-back';
import type { ShallowRef } from 'vue';
import { shallowReadonly, shallowRef, watch } from 'vue';

/** The last thing that was done here to one alarm, as the server confirmed it. */
export type ConfirmedHere =
  /** listed: a list has shown it so. One that was made before does not, and says nothing against it. */
  | { readonly did: 'setAside'; readonly alarm: SetAsideAlarm; readonly listed: boolean }
  /** With the alarm as it was set aside until then. */
  | { readonly did: 'broughtBack'; readonly alarm: SetAsideAlarm; readonly answer: BroughtBack };

export interface ConfirmedLines {
  readonly confirmed: Readonly<ShallowRef<readonly ConfirmedHere[]>>;
  readonly setAside: (alarm: SetAsideAlarm) => void;
  readonly broughtBack: (alarm: SetAsideAlarm, answer: BroughtBack) => void;
}

const isSame = (one: SetAsideAlarm, other: SetAsideAlarm): boolean =>
  one.id === other.id && one.mode === other.mode && one.until === other.until;

/** What the newest list leaves of it; null where the list tells of something that came after. */
function judge(one: ConfirmedHere, list: readonly SetAsideAlarm[]): ConfirmedHere | null {
  const { alarm } = one;
  switch (one.did) {
    case 'setAside': {
      if (list.some((listed) => isSame(listed, alarm))) return one.listed ? one : { ...one, listed: true };
      return one.listed ? null : one;
    }
    case 'broughtBack': {
      const again = list.some(
        ({ id, mode, since }) => id === alarm.id && mode !== 'suppressedByDesign' && since !== alarm.since,
      );
      return again ? null : one;
    }
  }
}

/** What was done on this page: of each alarm the last thing alone, and no longer than the list bears it out. */
export function useConfirmedHere(list: () => readonly SetAsideAlarm[] | null): ConfirmedLines {
  const confirmed = shallowRef<readonly ConfirmedHere[]>([]);
  const put = (next: ConfirmedHere): void => {
    confirmed.value = [...confirmed.value.filter(({ alarm }) => alarm.id !== next.alarm.id), next];
  };
  watch(list, (now) => {
    if (now !== null) confirmed.value = confirmed.value.flatMap((one) => judge(one, now) ?? []);
  });
  return {
    confirmed: shallowReadonly(confirmed),
    setAside: (alarm) => put({ did: 'setAside', alarm, listed: false }),
    broughtBack: (alarm, answer) => put({ did: 'broughtBack', alarm, answer }),
  };
}
