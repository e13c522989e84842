import type { Ref } from 'vue';
import { onScopeDispose, readonly, ref } from 'vue';
import { awakeMs } from '../feed/awake-ms';

/**
 * Monotonic ms, renewed each `everyMs` and when the page comes back into view (browsers slow timers of
 * hidden pages down). Ends with its scope.
 */
export function useTicks(monotonicMs: () => number = awakeMs, everyMs = 200): Readonly<Ref<number>> {
  const now = ref(monotonicMs());
  const look = (): void => {
    now.value = monotonicMs();
  };
  const timer = setInterval(look, everyMs);
  document.addEventListener('visibilitychange', look);
  onScopeDispose(() => {
    clearInterval(timer);
    document.removeEventListener('visibilitychange', look);
  });
  return readonly(now);
}

/** The same once, ms. */
export const awakeNowMs = (): number => awakeMs();
