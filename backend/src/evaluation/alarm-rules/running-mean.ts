import { keep, recall, type UnitContext } from './judge-context';

/**
 * Mean of a value over about `memoryMs`, kept in two cells of the rule: what swings with the cycles of a machine is judged by it.
 * NaN leaves it as it is; the first value begins it.
 */
export function runningMean(context: UnitContext, cell: number, value: number, memoryMs: number): number {
  const before = recall(context, cell);
  if (Number.isNaN(value)) return before;
  const elapsedMs = context.nowMs - recall(context, cell + 1);
  const share = Math.min(1, Math.max(0, elapsedMs) / memoryMs);
  const mean = Number.isNaN(before) || Number.isNaN(share) ? value : before + (value - before) * share;
  keep(context, cell, mean);
  keep(context, cell + 1, context.nowMs);
  return mean;
}
