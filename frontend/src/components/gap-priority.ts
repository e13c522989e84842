import type { Priority } from '@ebbline/shared/contract/alarm';
import type { LoopLine } from '@ebbline/shared/contract/live-feed';

/** What a margin below its guard is worth by the alarm catalogue (MARGIN-1, BOIL-1: severe, over 3 min) until its alarm says so. */
const byCatalogue: Priority = 2;

/** Priority to mark a gap with that is too small: that of its own alarm, whatever else stands at the loop. */
export const gapPriority = (line: Pick<LoopLine, 'gaps'>, side: 'left' | 'right'): Priority =>
  line.gaps?.[side] ?? byCatalogue;
