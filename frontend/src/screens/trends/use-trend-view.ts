import type { ComputedRef } from 'vue';
import { computed } from 'vue';
import { useRoute, useRouter } from 'vue-router';
import type { TrendName } from '../../text/trend-link';
import type { Move, Span } from './move-period';
import { movePeriod, spanBetween } from './move-period';
import type { TrendView } from './trend-address';
import { keyOf, readAddress, writeAddress } from './trend-address';

export interface ChangeableView {
  readonly view: ComputedRef<TrendView>;
  readonly put: (points: readonly TrendName[]) => void;
  readonly remove: (key: string) => void;
  readonly follow: (seconds: number) => void;
  readonly fix: (span: Span) => void;
  readonly zoom: (fromSeconds: number, toSeconds: number) => void;
  readonly pan: (seconds: number) => void;
  readonly move: (move: Move) => void;
  readonly set: (change: Partial<Omit<TrendView, 'points' | 'period'>>) => void;
}

/**
 * The view that the address holds, and every way to change it: each writes the address, and the browser's way back
 * undoes it.
 * @param shown what is on the screen now @param nowMs the clock in force
 */
export function useTrendView(shown: () => Span | null, nowMs: () => number | null): ChangeableView {
  const route = useRoute();
  const router = useRouter();
  // Another view only where the address says another: what is opened beside it changes nothing.
  const view = computed<TrendView>((before) => {
    const next = readAddress(route.query);
    return before !== undefined && JSON.stringify(before) === JSON.stringify(next) ? before : next;
  });
  const go = (change: Partial<TrendView>): void => {
    const { value } = route.query;
    const beside = value === undefined ? {} : { value };
    void router.push({ name: 'trends', query: { ...writeAddress({ ...view.value, ...change }), ...beside } });
  };
  const fix = ({ fromMs, toMs }: Span): void => go({ period: { kind: 'fixed', fromMs, toMs } });
  const later = (): number => nowMs() ?? Date.now();
  return {
    view,
    put: (points) => go({ points }),
    remove: (key) => go({ points: view.value.points.filter((name) => keyOf(name) !== key) }),
    follow: (seconds) => go({ period: { kind: 'follow', seconds } }),
    fix,
    zoom: (from, to) => fix(spanBetween(from * 1000, to * 1000, later())),
    pan(seconds) {
      const span = shown();
      if (span !== null) fix({ fromMs: span.fromMs + seconds * 1000, toMs: span.toMs + seconds * 1000 });
    },
    move(wanted) {
      const span = shown();
      if (span !== null) fix(movePeriod(span, wanted, later()));
    },
    set: go,
  };
}
