import type { Explanation } from '@ebbline/shared/contract/explanation';
import type { ComputedRef, Ref, ShallowRef } from 'vue';
import { computed, ref, watch } from 'vue';
import { readExplanation } from '../api/explanation';
import type { ValueName } from '../text/value-link';
import { valueKey } from '../text/value-link';
import { theLiveFeed } from './live-feed-key';
import { usePolled } from './use-polled';
import { useTicks } from './use-ticks';

/** How often what stands behind a value is asked for while it is looked at. ms */
export const explanationEveryMs = 2000;
/** An answer older than this is no picture of now: two were missed. s */
const oldAfterSeconds = 5;

export interface OpenedExplanation {
  readonly explanation: Readonly<ShallowRef<Explanation | null>>;
  readonly problem: Readonly<Ref<string | null>>;
  /** The clock in force when the answer came, ISO 8601; null before the first. */
  readonly asOf: Readonly<Ref<string | null>>;
  readonly secondsSince: ComputedRef<number>;
  readonly old: ComputedRef<boolean>;
}

/** What stands behind one value, asked for again and again while it is open. Ends with its scope. @param now the clock in force */
export function useExplanation(of: () => ValueName, now: () => string | null): OpenedExplanation {
  const { monotonicMs } = theLiveFeed();
  const ticks = useTicks(monotonicMs);
  const polled = usePolled(() => readExplanation(of()), {
    of: () => valueKey(of()),
    everyMs: explanationEveryMs,
    monotonicMs,
  });
  const asOf = ref<string | null>(null);
  watch(polled.cameMs, (came) => {
    asOf.value = came === null ? null : (now() ?? new Date().toISOString());
  });
  const secondsSince = computed(() => {
    const came = polled.cameMs.value;
    return came === null ? 0 : Math.max(0, Math.max(ticks.value, came) - came) / 1000;
  });
  return {
    explanation: polled.value,
    problem: polled.problem,
    asOf,
    secondsSince,
    old: computed(() => secondsSince.value > oldAfterSeconds),
  };
}
