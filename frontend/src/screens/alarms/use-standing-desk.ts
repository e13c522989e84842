import type { Alarm } from '@ebbline/shared/contract/alarm';
import type { SetAsideAlarm } from '@ebbline/shared/contract/alarm-modes';
import type { ComputedRef, Ref } from 'vue';
import { computed, provide, ref, watch } from 'vue';
import { needsAcknowledgement } from '../../components/alarm-facts';
import { useActsById } from '../../state/use-acts-by-id';
import { useAcknowledge } from '../../state/use-acknowledge';
import { actor } from '../../state/use-session';
import type { ListedAlarm, ListedGroup } from './keep-order';
import { sendSetAside } from './send-set-aside';
import { standingDeskKey } from './standing-desk';
import { useChosen } from './use-chosen';
import type { Places } from './use-places';

/** So few cases are shown with their grounds from the start; with more, first the list is to be seen whole. */
const shownWhole = 3;

export interface DeskOfList {
  /** Rows that are on the screen and wait for an acknowledgement: what lies folded is not among them. */
  readonly waiting: ComputedRef<readonly Alarm[]>;
  readonly selected: ComputedRef<readonly Alarm[]>;
  readonly select: (ids: readonly string[], selected: boolean) => void;
  /** Ended by an answer of the server; said until the page is left. */
  readonly ended: ComputedRef<readonly Alarm[]>;
  readonly setAside: ComputedRef<readonly SetAsideAlarm[]>;
  /** Whether what follows from an alarm is on the screen under it. */
  readonly isUnfolded: (id: string) => boolean;
}

/**
 * What the rows of a standing list share, and what is done with several of them.
 * @param alarms all that stand, also those that the list is narrowed to leave out
 */
export function useDeskOfList(
  listed: Readonly<Ref<readonly ListedGroup[]>>,
  alarms: () => readonly Alarm[],
  places: Places,
): DeskOfList {
  const { state, acknowledge } = useAcknowledge({ standing: alarms });
  const acts = useActsById(sendSetAside);
  const unfolded = ref<ReadonlySet<string>>(new Set());
  /** Said once of each row, and by its hand after that: no row opens or closes by itself. */
  const closed = ref<ReadonlyMap<string, boolean>>(new Map());
  watch(
    listed,
    (groups) => {
      const fresh = groups.filter(({ alarm }) => !closed.value.has(alarm.id));
      if (fresh.length === 0) return;
      const next = new Map(closed.value);
      for (const { alarm } of fresh) next.set(alarm.id, groups.length > shownWhole);
      closed.value = next;
    },
    { immediate: true },
  );
  const isUnfolded = (id: string): boolean => unfolded.value.has(id);
  const isClosed = (id: string): boolean => closed.value.get(id) ?? true;
  const rows = computed(() =>
    listed.value.flatMap((group): readonly ListedAlarm[] =>
      unfolded.value.has(group.alarm.id) ? [group, ...group.folded] : [group],
    ),
  );
  const waiting = computed(() =>
    rows.value.flatMap(({ alarm, gone }) => (!gone && needsAcknowledgement(alarm.state) ? [alarm] : [])),
  );
  const standing = computed(() => new Map(alarms().map((alarm) => [alarm.id, alarm])));
  const { isChosen, choose } = useChosen(() => standing.value);
  /** Since it was set aside: the list may be older than the answer. */
  const toldAgain = ({ id, since }: SetAsideAlarm): boolean =>
    Date.parse(standing.value.get(id)?.stateSince ?? '') > Date.parse(since);
  provide(standingDeskKey, {
    places,
    acknowledgingOf: (id) => state.value.get(id) ?? { step: 'idle' },
    acknowledge: (alarm, comment) => void acknowledge(alarm.id, actor(), comment),
    settingAsideOf: (id) => acts.state.value.get(id) ?? { step: 'idle' },
    setAside: (alarm, wish) => void acts.act(alarm.id, wish),
    isClosed,
    toggle(id) {
      closed.value = new Map(closed.value).set(id, !isClosed(id));
    },
    isUnfolded,
    unfold(id) {
      const next = new Set(unfolded.value);
      if (!next.delete(id)) next.add(id);
      unfolded.value = next;
    },
    isSelected: (id) => isChosen(standing.value.get(id)),
    select: (id, selected) => choose([id], selected),
  });
  return {
    waiting,
    isUnfolded,
    selected: computed(() => waiting.value.filter(isChosen)),
    select: choose,
    ended: computed(() =>
      [...state.value.values()].flatMap((one) =>
        one.step === 'confirmed' && one.alarm.state === 'normal' && !standing.value.has(one.alarm.id)
          ? [one.alarm]
          : [],
      ),
    ),
    setAside: computed(() =>
      [...acts.state.value.values()].flatMap((one) =>
        one.step === 'confirmed' && !toldAgain(one.answer) ? [one.answer] : [],
      ),
    ),
  };
}
