import type { ComputedRef } from 'vue';
import { computed, watch } from 'vue';
import { serverNowMs } from '../api/server-time';
import { renewSession, useSession } from './use-session';
import { useTicks } from './use-ticks';

/** How long before its end a session says so. ms */
const warnMs = 5 * 60_000;

/** What is about to end the session of this page. */
export interface ComingEnd {
  /** idle: unless someone acts; latest: whatever anyone does. */
  readonly by: 'idle' | 'latest';
  readonly minutes: number;
}

/** Null while no end is near. At the end the server is asked. Ends with its scope. */
export function useSessionEnd(nowMs: () => number = serverNowMs): ComputedRef<ComingEnd | null> {
  const { session } = useSession();
  const ticks = useTicks(nowMs, 1000);
  const soonest = computed(() => {
    const { endsAt, idleEndsAt, person } = session.value ?? { endsAt: null, idleEndsAt: null, person: null };
    if (person === null || endsAt === null) return null;
    const latest = Date.parse(endsAt);
    const idle = idleEndsAt === null ? Infinity : Date.parse(idleEndsAt);
    return idle < latest ? { by: 'idle' as const, atMs: idle } : { by: 'latest' as const, atMs: latest };
  });
  const leftMs = computed(() => (soonest.value === null ? Infinity : soonest.value.atMs - ticks.value));
  watch(
    () => leftMs.value <= 0,
    (over) => {
      if (over) void renewSession();
    },
  );
  return computed(() => {
    if (soonest.value === null || leftMs.value > warnMs || leftMs.value <= 0) return null;
    return { by: soonest.value.by, minutes: Math.max(1, Math.ceil(leftMs.value / 60_000)) };
  });
}
