import type { AlarmPerformance } from '@ebbline/shared/contract/alarm-performance';
import { fail } from '@ebbline/shared/errors/result';
import type { PerformanceWish } from '../api/performance';
import { readPerformance } from '../api/performance';
import type { Polled } from './use-polled';
import { usePolled } from './use-polled';

/** Figures of days move slowly. ms */
export const performanceEveryMs = 60_000;

/**
 * How well the alarms served.
 * @param wish what is asked for; null while the time in force is not known
 * @param about what it is of, other than the moment up to which: what came stays until that is another
 */
export const usePerformance = (wish: () => PerformanceWish | null, about: () => string): Polled<AlarmPerformance> =>
  usePolled(
    () => {
      const wanted = wish();
      if (wanted === null) return Promise.resolve(fail({ code: 'READING_NOT_SENT', message: 'nothing was asked for' }));
      return readPerformance(wanted);
    },
    {
      of: () => (wish() === null ? null : about()),
      everyMs: performanceEveryMs,
    },
  );
