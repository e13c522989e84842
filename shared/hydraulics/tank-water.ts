/** Water above a tank's zero, m³, of an upright tank: area × level. */
export const tankVolume = (areaM2: number, levelM: number): number => areaM2 * levelM;

/** Water that a tank gains, m³/s, from how fast its level rises. */
export const tankRate = (areaM2: number, levelRateMPerS: number): number => areaM2 * levelRateMPerS;

/** Seconds until a volume is used up (or a room filled) at a steady rate, m³/s; 0 where nothing is left (definition). */
export const timeUntilGone = (volumeM3: number, rateM3PerS: number): number => Math.max(0, volumeM3) / rateM3PerS;

/**
 * What a counter that only counts up gained between two readings. A reading below the last one has rolled over at
 * `fullScale` when the last was in its top tenth and it is in the lower half, and was set back to 0 when it is below a tenth of the last.
 * Any other comes of a controller that restored an older total, or of a reading put right: it tells of no water. Own rule.
 */
export function counted(before: number, now: number, fullScale: number): number {
  if (now >= before) return now - before;
  if (Number.isFinite(fullScale) && before > 0.9 * fullScale && now < 0.5 * fullScale) return fullScale - before + now;
  return now < 0.1 * before ? now : 0;
}
