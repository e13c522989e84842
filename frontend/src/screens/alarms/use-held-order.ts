import type { ComputedRef, Ref, ShallowRef } from 'vue';
import { computed, onScopeDispose, ref, shallowReadonly, shallowRef, watch } from 'vue';
import type { AlarmGroup } from '../../components/order-alarms';
import type { Known, ListedGroup } from './keep-order';
import { keepOrder, list } from './keep-order';

/** A hand that has not moved for so long is no longer there: a mouse may lie on the list all night. ms */
const restsAfterMs = 60_000;

export interface HeldOrder {
  readonly listed: Readonly<ShallowRef<readonly ListedGroup[]>>;
  /** True while somebody is in the list: no row moves. */
  readonly held: Readonly<Ref<boolean>>;
  /** Groups that came while it was held, and those that went. */
  readonly late: ComputedRef<number>;
  readonly gone: ComputedRef<number>;
  /** Something moved in the list. */
  readonly touch: () => void;
  /** Neither pointer nor focus is in the list any more. */
  readonly leave: () => void;
  /** Puts all in order, whoever is in the list. */
  readonly order: () => void;
}

/**
 * No row jumps away from under a hand: while pointer or focus is in the list, every row keeps its place.
 * @param known what stands at all, asked for with each new list
 * @param view says the same text as long as the list is narrowed alike; another text is a list of its own
 */
export function useHeldOrder(groups: () => readonly AlarmGroup[], known: () => Known, view: () => string): HeldOrder {
  const held = ref(false);
  const listed = shallowRef<readonly ListedGroup[]>(list(groups()));
  let rest: ReturnType<typeof setTimeout> | undefined;
  const order = (): void => {
    listed.value = list(groups());
  };
  const leave = (): void => {
    clearTimeout(rest);
    if (!held.value) return;
    held.value = false;
    order();
  };
  watch(groups, (next) => {
    listed.value = held.value ? keepOrder(listed.value, next, known()) : list(next);
  });
  watch(view, order);
  onScopeDispose(() => clearTimeout(rest));
  return {
    listed: shallowReadonly(listed),
    held,
    late: computed(() => listed.value.filter(({ late }) => late).length),
    gone: computed(() => listed.value.filter(({ gone }) => gone).length),
    touch() {
      clearTimeout(rest);
      held.value = true;
      rest = setTimeout(leave, restsAfterMs);
    },
    leave,
    order,
  };
}
