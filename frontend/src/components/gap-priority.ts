import type { Priority } from '@ebbline/shared/contract/alarm';
import type { LoopLine } from '@ebbline/shared/contract/live-feed';

/** What a margin below its guard is worth by the alarm catalogue (MARGIN-1, BOIL-1: severe, over 3 min) until its alarm says so. */
const byCatalogue: Priority = 2;
const families = { left: 'BOIL-', right: 'MARGIN-' } as const;

/** Priority to mark a gap with that is too small: its alarm's own where that is the loop's worst. */
export function gapPriority(worst: LoopLine['worst'], side: 'left' | 'right'): Priority {
  return worst !== null && worst.entry.startsWith(families[side]) ? worst.priority : byCatalogue;
}
