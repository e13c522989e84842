import type { Figure } from '@ebbline/shared/contract/live-feed';
import { isMissing } from '../../text/is-absent';

/** The first of the figures that should be there and is not: it says why; null where none is missing. */
export const missingFigure = (figures: readonly Figure[]): Figure | null => figures.find(isMissing) ?? null;
