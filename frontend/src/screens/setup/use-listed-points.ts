import type { SetupPoint } from '@ebbline/shared/contract/setup';
import type { ComputedRef, Ref } from 'vue';
import { computed, shallowRef, watch } from 'vue';

const idOf = ({ reading }: SetupPoint): string => reading.id;
const isMissing = ({ arriving }: SetupPoint): boolean => arriving !== 'arriving';

export interface ListedPoints {
  readonly shown: ComputedRef<readonly SetupPoint[]>;
  /** How many are listed that arrive by now. */
  readonly came: ComputedRef<number>;
  readonly leaveOutWhatCame: () => void;
}

/**
 * The points of a unit that do not arrive, or all. One that begins to arrive while somebody reads stays where it stands:
 * what is pressed or read does not move away, and who mends a gateway sees what came of it.
 */
export function useListedPoints(
  points: () => readonly SetupPoint[] | null,
  unit: () => string | null,
  all: Ref<boolean>,
): ListedPoints {
  const listed = shallowRef<ReadonlySet<string>>(new Set());
  const missing = computed(() => (points() ?? []).filter(isMissing).map(idOf));
  watch(
    [unit, missing],
    ([now, ids], [before]) => {
      listed.value = new Set([...(now === before ? listed.value : []), ...ids]);
    },
    { immediate: true },
  );
  const kept = computed(() => (points() ?? []).filter((point) => listed.value.has(idOf(point))));
  return {
    shown: computed(() => (all.value ? (points() ?? []) : kept.value)),
    came: computed(() => (all.value ? 0 : kept.value.filter((point) => !isMissing(point)).length)),
    leaveOutWhatCame: () => {
      listed.value = new Set(missing.value);
    },
  };
}
