import { formatNumber } from '../../text/format-number';

/** How much of a time has values. Never rounded up to all of it, nor down to nothing where there are some. */
export function sayShare(share: number): string {
  if (share >= 1) return 'all';
  if (share > 0 && share < 0.01) return '<\u00a01\u00a0%';
  return `${formatNumber(Math.min(99.9, 100 * share), share > 0.99 ? 1 : 0)}\u00a0%`;
}
