import { reasonBit } from '../slots/quality-reasons';
import type { SampleView } from '../sample/sample-view';

/** Samples go on coming and the value has not changed at all for longer than is believable. */
export function stuck({ site, state, slot, own, ownBefore, tickMs }: SampleView): number {
  if (own !== ownBefore) return 0;
  const unchangedMs = tickMs - (state.unchangedSinceMs[slot] ?? Number.NaN);
  return unchangedMs >= (site.slots.stuckMs[slot] ?? Infinity) ? reasonBit.stuck : 0;
}
