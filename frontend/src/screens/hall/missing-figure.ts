import type { Figure, LoopLine } from '@ebbline/shared/contract/live-feed';
import { isMissing } from '../../text/is-missing';

/** A figure that should be there and is not, and of which unit. */
export interface MissingFigure {
  readonly unit: string;
  readonly figure: Figure;
}

/** The first of the figures that should be there and is not: it says why; null where none is missing. */
export function missingFigure(lines: readonly LoopLine[], figureOf: (line: LoopLine) => Figure): MissingFigure | null {
  const line = lines.find((one) => isMissing(figureOf(one)));
  return line === undefined ? null : { unit: line.unit, figure: figureOf(line) };
}
