import { badBits, reasonBit } from '../slots/quality-reasons';
import type { SampleView } from '../sample/sample-view';

/** Samples closer than this are judged as if so far apart: noise is not a rate. */
const shortestS = 1;

/** Moved faster than it can since the sample before. Only the first sample after a step is marked. */
export function jump({ site, state, slot, own, ownBefore, sourceMs }: SampleView): number {
  const perS = site.slots.jumpPerS[slot] ?? Infinity;
  const before = state.sourceMs[slot] ?? Number.NaN;
  if (perS === Infinity || Number.isNaN(before) || Number.isNaN(ownBefore)) return 0;
  if (((state.reasons[slot] ?? 0) & badBits & ~reasonBit.stale) !== 0) return 0;
  const elapsedS = Math.max((sourceMs - before) / 1000, shortestS);
  return Math.abs(own - ownBefore) > perS * elapsedS ? reasonBit.jump : 0;
}
