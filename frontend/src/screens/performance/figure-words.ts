import type { PerformanceFigure } from '@ebbline/shared/contract/alarm-performance';
import { formatNumber } from '../../text/format-number';
import { saySpan } from '../../text/say-span';

export const verdictWords: { readonly [V in PerformanceFigure['verdict']]: string } = {
  within: 'within what is acceptable',
  between: 'more than acceptable, within the limit',
  beyond: 'beyond the limit',
  noTarget: 'no target',
  nothing: 'nothing to reckon it from',
};

/** As many decimals as tell small figures apart. */
function decimalsOf(value: number): number {
  const size = Math.abs(value);
  if (Number.isInteger(value) || size >= 100) return 0;
  return size >= 1 ? 1 : 2;
}

/** A figure with its unit: `3.2 a day`, `0.4 %`, `45 s`. */
export function sayFigure(value: number, unit: string): string {
  if (unit === 's') return saySpan(value);
  const number = formatNumber(value, decimalsOf(value));
  return unit === '' || unit === '1' ? number : `${number}\u00a0${unit}`;
}

/** What is aimed at: `about 150, at most 300 a day`; null without a target. */
export function sayTarget({ acceptable, limit, unit }: PerformanceFigure): string | null {
  if (acceptable === null && limit === null) return null;
  if (acceptable === null || acceptable === limit) return `at most ${sayFigure(limit ?? 0, unit)}`;
  if (limit === null) return `about ${sayFigure(acceptable, unit)}`;
  return `${sayFigure(acceptable, '')} acceptable, at most ${sayFigure(limit, unit)}`;
}
