import type { ComputedRef } from 'vue';
import { computed } from 'vue';
import type { Site } from '@ebbline/shared/contract/http-api';
import { maximumTrendPoints } from '@ebbline/shared/contract/live-feed';
import { useAlarmSpans } from '../../state/use-alarm-spans';
import { useTrendsFrame } from '../../state/use-frame';
import { useLimits } from '../../state/use-limits';
import { useLiveTail } from '../../state/use-live-tail';
import { useNotesOver } from '../../state/use-notes-over';
import { usePastUncertainty } from '../../state/use-past-uncertainty';
import { useTrends } from '../../state/use-trends';
import { buildLanes } from './build-lanes';
import { comparisonsOf, namesOf } from './compared';
import { failuresOf } from './failures-of';
import type { Span } from './move-period';
import { tracksOf } from './say-uncertainty';
import type { TrendView } from './trend-address';
import { keyOf } from './trend-address';

/** An earlier stretch goes on beyond what is shown, so that its line reaches the edge until it is read anew. ms */
const aheadMs = 60_000;
/** The same list each time: another is asked for anew. */
const none: TrendView['points'] = [];

/** Everything that a view shows, read as the view and the time change. */
export function useTrendData(view: ComputedRef<TrendView>, shown: ComputedRef<Span | null>, site: () => Site | null) {
  /** The same list as long as it holds the same points: asking anew begins anew. */
  const points = computed((last: TrendView['points'] | undefined) =>
    last !== undefined && JSON.stringify(last) === JSON.stringify(view.value.points) ? last : view.value.points,
  );
  const units = computed(() => [...new Set(points.value.map(({ unit }) => unit))]);
  const nameOf = (id: string): string => site()?.units.find((unit) => unit.id === id)?.name ?? id;
  const comparisons = computed(() => comparisonsOf(view.value, nameOf));
  const besideNames = computed(() =>
    namesOf(
      points.value,
      comparisons.value.find(({ mark }) => mark === 'diamond'),
    ),
  );
  const asked = computed((last: TrendView['points'] | undefined) => {
    const known = new Set(points.value.map(keyOf));
    const all = [...points.value, ...besideNames.value.filter((name) => !known.has(keyOf(name)))];
    const next = all.slice(0, maximumTrendPoints);
    return last !== undefined && JSON.stringify(last) === JSON.stringify(next) ? last : next;
  });
  const { frame, refusal } = useTrendsFrame(() => asked.value);
  const { newest, samples } = useLiveTail(() => frame.value);
  const following = computed(() => view.value.period.kind === 'follow');
  const span = (): Span | null => shown.value;
  const nowMs = (): number | null => {
    const now = frame.value?.clock.now ?? null;
    return now === null ? null : Date.parse(now);
  };
  const over = { span, nowMs, following: () => following.value };
  const history = useTrends({ points: () => points.value, ...over });
  const ofBeside = useTrends({ points: () => besideNames.value, ...over });
  const ofEarlier = useTrends({
    points: () => (view.value.earlierSeconds === null ? none : points.value),
    subject: () => view.value.earlierSeconds,
    span() {
      const [now, backMs] = [shown.value, (view.value.earlierSeconds ?? 0) * 1000];
      const ahead = following.value ? aheadMs : 0;
      return now === null ? null : { fromMs: now.fromMs - backMs, toMs: now.toMs - backMs + ahead };
    },
    following: () => following.value,
    nowMs,
  });
  const uncertainty = usePastUncertainty({
    points: () => points.value,
    // The lines first: both are read from the same store.
    wanted: () => view.value.uncertainty && history.value.columns.size > 0,
    ...over,
  });
  const alarms = useAlarmSpans({
    units: () => units.value,
    wanted: () => view.value.alarms,
    standing: () => JSON.stringify(frame.value?.standing ?? null),
    ...over,
  });
  const notes = useNotesOver({ units: () => units.value, wanted: () => view.value.notes, ...over });
  const limits = useLimits(() => units.value);
  const compared = computed(() =>
    comparisons.value.map((comparison) => {
      const { columns, problems } = (comparison.mark === 'circle' ? ofEarlier : ofBeside).value;
      return { comparison, columns, problems };
    }),
  );
  const failures = computed(() => failuresOf(history.value.problems, compared.value));
  const lanes = computed(() =>
    buildLanes({
      points: points.value,
      site: site(),
      columns: history.value.columns,
      live: following.value ? samples.value : new Map(),
      newest: newest.value,
      limits: limits.value,
      showLimits: view.value.limits,
      uncertainties: view.value.uncertainty ? tracksOf(uncertainty.value.found) : null,
      compared: compared.value,
    }),
  );
  const problems = computed(
    () => new Map([...ofEarlier.value.problems, ...ofBeside.value.problems, ...history.value.problems]),
  );
  const busy = computed(() => [history, ofBeside, ofEarlier].some((one) => one.value.busy));
  const isOfOther = computed(() => [history, ofBeside, ofEarlier].some((one) => one.value.isOfOther));
  return {
    points,
    units,
    nameOf,
    lanes,
    compared,
    history,
    newest,
    refusal,
    uncertainty,
    alarms,
    notes,
    problems,
    failures,
    busy,
    isOfOther,
  };
}
