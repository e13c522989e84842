import type { CompiledSite } from '../site/compiled-site';
import type { RefusalCode } from './acceptance';
import type { ClockKind } from './intake-context';

/**
 * On the source clock a gap of up to a day is believed (a recording with holes); one stray stamp of another
 * year must not carry the clock away.
 */
export const sourceClockGapMs = 86_400_000;

/**
 * The latest source time that is believed at this arrival, ms. `wallMs`: what the machine's clock says. NaN on the source clock before
 * its first sample.
 */
export function latestBelievedMs(site: CompiledSite, clock: ClockKind, arrivalMs: number, wallMs: number): number {
  return clock === 'source' ? arrivalMs + sourceClockGapMs : Math.max(arrivalMs, wallMs) + site.futureToleranceMs;
}

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
  if (sourceMs > latestBelievedMs(site, clock, arrivalMs, wallMs)) return 'TIME_FUTURE';
  const earliestMs = clock === 'source' ? arrivalMs : Math.min(arrivalMs, wallMs);
  if (sourceMs < earliestMs - site.oldestSampleMs) return 'TIME_TOO_OLD';
  return null;
}
