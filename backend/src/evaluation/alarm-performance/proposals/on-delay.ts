import type { Annunciation } from '../annunciation';
import { lastedMs, type Delays } from './off-delay';

/** A delay may take no more than this share of the time that a person has to respond. Own rule. */
export const shareOfResponse = 0.25;

export interface OnDelayFound {
  readonly onDelayMs: number;
  /** How many of the annunciations would not have been told. */
  readonly spared: number;
  readonly of: number;
  /** The longest that is spared, ms. */
  readonly longestMs: number;
}

/**
 * The on-delay, in whole seconds, that outlasts as many of the short conditions as the time to respond allows. Null where that is
 * none, or no more than the present delay spares.
 */
export function onDelayOver(
  fleeting: readonly Annunciation[],
  delays: Delays,
  timeToRespondMs: number,
): OnDelayFound | null {
  const lasted = fleeting.map((one) => lastedMs(one, delays)).filter((ms) => ms >= 0);
  const allowedMs = timeToRespondMs * shareOfResponse;
  const spared = lasted.filter((ms) => wholeSecondsOver(ms) <= allowedMs);
  if (spared.length === 0) return null;
  const longestMs = spared.reduce((most, ms) => Math.max(most, ms), 0);
  const onDelayMs = wholeSecondsOver(longestMs);
  return onDelayMs <= delays.onDelayMs ? null : { onDelayMs, spared: spared.length, of: fleeting.length, longestMs };
}

const wholeSecondsOver = (ms: number): number => (Math.floor(ms / 1000) + 1) * 1000;
