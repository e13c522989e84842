import { formatDuration } from './format-age';
import { formatNumber } from './format-number';

/** A length of time in the two largest units that say anything: `3 h 12 min`, `45 s`. @param seconds 0 or more */
export function saySpan(seconds: number): string {
  const whole = Math.round(seconds);
  if (seconds > 0 && whole < 10) return `${formatNumber(seconds, Number.isInteger(seconds) ? 0 : 1)}\u00a0s`;
  if (whole < 120) return formatDuration(whole);
  const [large, small, sizes] =
    whole < 7200
      ? (['min', 's', [60, 1]] as const)
      : whole < 172_800
        ? (['h', 'min', [3600, 60]] as const)
        : (['d', 'h', [86_400, 3600]] as const);
  const most = Math.floor(whole / sizes[0]);
  const rest = Math.floor((whole - most * sizes[0]) / sizes[1]);
  return rest === 0 ? `${most}\u00a0${large}` : `${most}\u00a0${large} ${rest}\u00a0${small}`;
}
