import type { Lane } from './lane';

/** px */
export const rightPadding = 22;
const numbersWidth = 72;
const wordsWidth = 150;

/** Where the time axis of a lane begins, and how far before the right edge it ends, px: what is drawn under it stands on the same axis. */
export const laneEdges = ({ scale }: Pick<Lane, 'scale'>): { readonly left: number; readonly right: number } => ({
  left: scale.words === null ? numbersWidth : wordsWidth,
  right: rightPadding,
});
