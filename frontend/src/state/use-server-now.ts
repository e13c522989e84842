import type { ComputedRef } from 'vue';
import { computed } from 'vue';
import { serverNowMs } from '../api/server-time';
import { useTicks } from './use-ticks';

/** The server's wall clock, renewed each second; sessions and tokens end by it, whatever clock the plant goes by. ISO 8601 */
export function useServerNow(nowMs: () => number = serverNowMs): ComputedRef<string> {
  const ticks = useTicks(nowMs, 1000);
  return computed(() => new Date(ticks.value).toISOString());
}
