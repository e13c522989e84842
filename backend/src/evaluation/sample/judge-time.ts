import type { CompiledSite } from '../site/compiled-site';
import type { RefusalCode } from './acceptance';
import type { ClockKind } from './intake-context';

/**
 * On the source clock a gap of up to a day is believed (a recording with holes); one stray stamp of another
 * year must not carry the clock away.
 */
export const sourceClockGapMs = 86_400_000;

/**
 * Why a source time is refused at this arrival, or null. `arrivalMs` is NaN on the source clock before its first sample. On the wall
 * clock a time is believed that is right by the tick clock or by the machine's, which differ once the machine's was stepped: nobody
 * knows here which of them is right, and who refuses what is right sees nothing until the next start.
 */
export function timeRefusal(
  site: CompiledSite,
  clock: ClockKind,
  sourceMs: number,
  arrivalMs: number,
  wallMs = arrivalMs,
): RefusalCode | null {
  if (Number.isNaN(sourceMs)) return 'TIME_MALFORMED';
  const aheadMs = clock === 'source' ? sourceClockGapMs : site.futureToleranceMs;
  const [latestMs, earliestMs] =
    clock === 'source' ? [arrivalMs, arrivalMs] : [Math.max(arrivalMs, wallMs), Math.min(arrivalMs, wallMs)];
  if (sourceMs > latestMs + aheadMs) return 'TIME_FUTURE';
  if (sourceMs < earliestMs - site.oldestSampleMs) return 'TIME_TOO_OLD';
  return null;
}
