import type { AlarmSettings } from '@ebbline/shared/contract/alarm-settings';
import type { LimitLine } from '@ebbline/shared/contract/setup';

/** A limit of a trial where it stands beside the drawn point, in the unit of measure of the point. */
export interface DrawnLimit {
  readonly whose: 'live' | 'proposed' | 'both';
  readonly value: number;
}

/**
 * Entries whose limit is a distance from a figure of the unit's design: the line stands at that figure and the
 * distance together.
 */
const distances: ReadonlySet<string> = new Set(['FAC-2', 'TSUP-1', 'TSUP-2']);
/** Entries whose limit is a share of a figure of the unit's design. */
const shares: ReadonlySet<string> = new Set(['FLOW-2']);

/**
 * Both limits beside the point. Where an entry is set by a distance or a share, the line that the unit draws today
 * says where its figure stands; without that line nothing is drawn.
 * @param lines of the unit, as it runs
 */
export function drawnLimits(
  entry: string,
  point: string,
  live: AlarmSettings,
  proposed: AlarmSettings,
  lines: readonly LimitLine[],
): readonly DrawnLimit[] {
  const own = lines.find((line) => line.entry === entry && line.point === point);
  const at = (settings: AlarmSettings): readonly number[] =>
    [settings.low, settings.limit].flatMap((value) => {
      const placed = value === null ? null : place(entry, value, live, own);
      return placed === null ? [] : [placed];
    });
  const [runs, tried] = [at(live), at(proposed)];
  return [
    ...runs.map((value): DrawnLimit => ({ whose: tried.includes(value) ? 'both' : 'live', value })),
    ...tried.filter((value) => !runs.includes(value)).map((value): DrawnLimit => ({ whose: 'proposed', value })),
  ];
}

function place(entry: string, value: number, live: AlarmSettings, own: LimitLine | undefined): number | null {
  if (distances.has(entry)) return own === undefined || live.limit === null ? null : own.limit - live.limit + value;
  if (shares.has(entry))
    return own === undefined || live.limit === null || live.limit === 0 ? null : (own.limit / live.limit) * value;
  return value;
}
