import type {
  AlarmsFrame,
  HallFrame,
  LoopFrame,
  TrendPoint,
  TrendsFrame,
  ViewRefusal,
} from '@ebbline/shared/contract/live-feed';
import type { ComputedRef, ShallowRef } from 'vue';
import { computed, watch } from 'vue';
import { theLiveFeed } from './live-feed-key';

export interface Shown<Of> {
  /** Null until the first frame of what was asked for. */
  readonly frame: ComputedRef<Of | null>;
  readonly refusal: Readonly<ShallowRef<ViewRefusal | null>>;
}

/** Asks for a hall, and gives its frames and no other hall's. Nothing is asked while no hall is known. */
export function useHallFrame(hall: () => string | null): Shown<HallFrame> {
  const feed = theLiveFeed();
  watch(
    hall,
    (wanted) => {
      if (wanted !== null) feed.show({ screen: 'hall', hall: wanted });
    },
    { immediate: true },
  );
  const frame = computed(() => {
    const newest = feed.frame.value;
    return newest?.screen === 'hall' && newest.hall === hall() ? newest : null;
  });
  return { frame, refusal: feed.refusal };
}

export function useLoopFrame(unit: () => string): Shown<LoopFrame> {
  const feed = theLiveFeed();
  watch(unit, (wanted) => feed.show({ screen: 'loop', unit: wanted }), { immediate: true });
  const frame = computed(() => {
    const newest = feed.frame.value;
    return newest?.screen === 'loop' && newest.unit === unit() ? newest : null;
  });
  return { frame, refusal: feed.refusal };
}

export function useAlarmsFrame(): Shown<AlarmsFrame> {
  const feed = theLiveFeed();
  feed.show({ screen: 'alarms' });
  const frame = computed(() => (feed.frame.value?.screen === 'alarms' ? feed.frame.value : null));
  return { frame, refusal: feed.refusal };
}

/** Asks for the newest readings of some points; while there are none, for the alarms, so that the feed shows that it lives. */
export function useTrendsFrame(points: () => readonly TrendPoint[]): Shown<TrendsFrame> {
  const feed = theLiveFeed();
  watch(
    points,
    (wanted) => feed.show(wanted.length === 0 ? { screen: 'alarms' } : { screen: 'trends', points: wanted }),
    { immediate: true },
  );
  const frame = computed(() => (feed.frame.value?.screen === 'trends' ? feed.frame.value : null));
  return { frame, refusal: feed.refusal };
}
