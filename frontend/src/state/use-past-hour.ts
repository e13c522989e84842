import type { Trail } from '@ebbline/shared/contract/hall-trails';
import type { HallPicture } from '@ebbline/shared/contract/live-feed';
import type { PastHall } from '@ebbline/shared/contract/past';
import type { ComputedRef, Ref } from 'vue';
import { computed } from 'vue';
import { foldTrail, keptOf, minuteOf, noTrail } from './fold-trail';
import { usePastTrails } from './use-past';

export interface PastHour {
  /** By unit; undefined while they are not known. */
  readonly trails: ComputedRef<ReadonlyMap<string, Trail> | undefined>;
  /** The picture with how far the hour reached, where that is known. */
  readonly frame: ComputedRef<HallPicture | null>;
  readonly reading: Readonly<Ref<boolean>>;
  readonly problem: Readonly<Ref<string | null>>;
}

const minuteMs = 60_000;

/**
 * The hour that ended with a past moment of a hall: read once for a minute, and its last minute is what the moment shows. While the
 * next minute is being read, the hour before goes on with the moment; of any other time nothing is drawn.
 * @param past what is shown; of a moment that is shown by its minute there is no hour
 */
export function usePastHour(hall: () => string, past: () => PastHall | null): PastHour {
  const at = computed(() => {
    const shown = past();
    return shown?.resolution === 'second' ? minuteOf(shown.at) : null;
  });
  const read = usePastTrails(hall, () => (at.value === null ? null : new Date(at.value * minuteMs).toISOString()));
  const trails = computed(() => {
    const [answer, minute, loops] = [read.value.value, at.value, past()?.frame.loops];
    if (answer === null || answer.minute === null || minute === null || loops === undefined) return undefined;
    const passed = minute - minuteOf(answer.minute);
    if (passed !== 0 && passed !== 1) return undefined;
    const kept = keptOf(answer);
    return new Map(
      loops.map(({ unit, pressureWindow: { lowestPa, highestPa } }) => {
        const before = kept.get(unit) ?? noTrail(minute);
        return [unit, foldTrail(before, minute, lowestPa, highestPa)] as const;
      }),
    );
  });
  const frame = computed(() => {
    const shown = past()?.frame ?? null;
    return shown === null || trails.value === undefined ? shown : withHour(shown, trails.value);
  });
  return { trails, frame, reading: read.reading, problem: read.problem };
}

/** How far each loop reached within its hour is on the axis too. */
const withHour = (frame: HallPicture, trails: ReadonlyMap<string, Trail>): HallPicture => ({
  ...frame,
  loops: frame.loops.map((line) => {
    const { lowestPa = [], highestPa = [] } = trails.get(line.unit) ?? {};
    const hour = { hourLowestPa: least(lowestPa), hourHighestPa: most(highestPa) };
    return { ...line, pressureWindow: { ...line.pressureWindow, ...hour } };
  }),
});

const seen = (cells: Trail['lowestPa']): number[] => cells.filter((pa) => pa !== null);
const least = (cells: Trail['lowestPa']): number | null => (seen(cells).length === 0 ? null : Math.min(...seen(cells)));
const most = (cells: Trail['lowestPa']): number | null => (seen(cells).length === 0 ? null : Math.max(...seen(cells)));
