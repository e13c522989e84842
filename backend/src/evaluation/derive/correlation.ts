import type { MatchedPair } from '../site/compiled-unit';

/** Correlation of the errors of two slots by the site file's matched pairs; 0 without a record. */
export function correlationOf(pairs: readonly MatchedPair[], one: number, other: number): number {
  for (const { slot, mate, correlation } of pairs)
    if ((slot === one && mate === other) || (slot === other && mate === one)) return correlation;
  return 0;
}
