import { formatClock } from '../../text/format-time';
import type { PastWindow } from './past-address';

/** Ticks of a scale, with the share of its width at which each stands. */
export function scaleTicks(
  { fromMs, toMs }: PastWindow,
  zone: string,
): { readonly share: number; readonly text: string }[] {
  const everyMs = (toMs - fromMs) / 6;
  return Array.from({ length: 7 }, (_, i) => {
    const ms = fromMs + i * everyMs;
    return { share: i / 6, text: formatClock(new Date(ms).toISOString(), zone).slice(0, 5) };
  });
}

/** Where a time stands on the scale, 0 to 1. */
export const shareOf = (iso: string, { fromMs, toMs }: PastWindow): number =>
  Math.min(1, Math.max(0, (Date.parse(iso) - fromMs) / (toMs - fromMs)));
