import type { LoopLine } from '@ebbline/shared/contract/live-feed';

/** What the axis of a hall has to reach, Pa absolute; unknown ones as null. */
export const axisPressures = (lines: readonly LoopLine[]): readonly (number | null)[] =>
  lines.flatMap(({ pressureWindow: window }) => [window.ambientPa, window.highestPa, window.hourHighestPa]);
