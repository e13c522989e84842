import type { Standing } from './annunciation';
import type { Period } from './period';

/** How many alarms stood before the operator: mean over time, and the most at once. Null for a period without length. */
export function standingCount(
  standings: readonly Standing[],
  { fromMs, toMs }: Period,
): { readonly mean: number; readonly most: number } | null {
  if (!(toMs > fromMs)) return null;
  const steps: { readonly atMs: number; readonly change: 1 | -1 }[] = [];
  let alarmMs = 0;
  for (const one of standings) {
    const [cameMs, wentMs] = [Math.max(fromMs, one.fromMs), Math.min(toMs, one.toMs)];
    if (!(wentMs > cameMs)) continue;
    alarmMs += wentMs - cameMs;
    steps.push({ atMs: cameMs, change: 1 }, { atMs: wentMs, change: -1 });
  }
  // Who goes makes room for who comes at the same time.
  steps.sort((a, b) => a.atMs - b.atMs || a.change - b.change);
  let [now, most] = [0, 0];
  for (const { change } of steps) {
    now += change;
    most = Math.max(most, now);
  }
  return { mean: alarmMs / (toMs - fromMs), most };
}
