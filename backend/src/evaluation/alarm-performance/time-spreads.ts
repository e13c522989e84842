import type { Priority } from '@ebbline/shared/contract/alarm';
import type { Annunciation } from './annunciation';
import { priorities } from './priority-mix';
import { quantile } from './quantile';

export interface Spread {
  readonly priority: Priority;
  readonly count: number;
  readonly medianSeconds: number | null;
  readonly p90Seconds: number | null;
}

/** Seconds from being told to a later time, by priority: median and nine tenths. Those without that time are left out. */
export function timeSpreads(told: readonly Annunciation[], until: 'acknowledgedMs' | 'clearedMs'): Spread[] {
  return priorities.map((priority) => {
    const seconds = told.flatMap((one) => {
      const untilMs = one[until];
      return one.priority === priority && untilMs !== null ? [(untilMs - one.atMs) / 1000] : [];
    });
    return {
      priority,
      count: seconds.length,
      medianSeconds: quantile(seconds, 0.5),
      p90Seconds: quantile(seconds, 0.9),
    };
  });
}
