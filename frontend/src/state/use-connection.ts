import type { ComputedRef, Ref } from 'vue';
import { computed, ref, watch } from 'vue';
import type { ConnectionState } from './judge-connection';
import { judgeConnection } from './judge-connection';
import { theLiveFeed } from './live-feed-key';
import { useTicks } from './use-ticks';

export interface Connection {
  readonly state: ComputedRef<ConnectionState>;
  /** Wall time as a label: when the state last changed; for `lost`, when the last frame came. ISO 8601. */
  readonly since: Readonly<Ref<string | null>>;
  /** Seconds since the newest frame; what every age grows by between frames. */
  readonly secondsSinceFrame: ComputedRef<number>;
  /** True where everything shown is old. */
  readonly old: ComputedRef<boolean>;
}

/** How fresh the screen is. Call once, in the frame of the page. */
export function useConnection(): Connection {
  const feed = theLiveFeed();
  const ticks = useTicks(feed.monotonicMs);
  const msSinceFrame = computed(() => {
    const arrived = feed.frameArrivedMs.value;
    return arrived === null ? null : Math.max(0, Math.max(ticks.value, arrived) - arrived);
  });
  const state = computed(() => judgeConnection(feed.link.value, msSinceFrame.value));
  const since = ref<string | null>(null);
  watch(
    state,
    (now, before) => {
      if (now === 'lagging' || (now === 'live' && before === 'lagging')) return;
      // Asked anew: after a sleep the connection may be told as closed before the next tick.
      const arrived = feed.frameArrivedMs.value;
      const back = now === 'lost' && arrived !== null ? feed.monotonicMs() - arrived : 0;
      since.value = new Date(Date.now() - back).toISOString();
    },
    { immediate: true },
  );
  return {
    state,
    since,
    secondsSinceFrame: computed(() => (msSinceFrame.value ?? 0) / 1000),
    old: computed(() => state.value === 'lost'),
  };
}
