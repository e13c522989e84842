import type { CompiledSite } from '../site/compiled-site';
import type { RefusalCode } from './acceptance';
import type { ClockKind } from './intake-context';

/**
 * On the source clock a gap of up to a day is believed (a recording with holes); one stray stamp of another
 * year must not carry the clock away.
 */
export const sourceClockGapMs = 86_400_000;

/** Why a source time is refused at this arrival, or null. `arrivalMs` is NaN on the source clock before its first sample. */
export function timeRefusal(
  site: CompiledSite,
  clock: ClockKind,
  sourceMs: number,
  arrivalMs: number,
): RefusalCode | null {
  if (Number.isNaN(sourceMs)) return 'TIME_MALFORMED';
  const aheadMs = clock === 'source' ? sourceClockGapMs : site.futureToleranceMs;
  if (sourceMs > arrivalMs + aheadMs) return 'TIME_FUTURE';
  if (sourceMs < arrivalMs - site.oldestSampleMs) return 'TIME_TOO_OLD';
  return null;
}
