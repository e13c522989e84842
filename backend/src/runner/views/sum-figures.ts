import { isAbsent } from '@ebbline/shared/contract/is-absent';
import type { Figure } from '@ebbline/shared/contract/live-feed';
import type { QualityReason } from '@ebbline/shared/contract/reading';
import { noFigure } from './to-reading';

/** True where a figure can be added: it has a value, and nothing says that it is wrong. */
export const counts = ({ value, quality }: Pick<Figure, 'value' | 'quality'>): boolean =>
  value !== null && quality !== 'bad';

/**
 * The sum over the loops of a hall. Where some have no value the sum is of the others and says so by its
 * quality; without any value there is none, for the loops' own reasons. Uncertainties of separate instruments add as
 * squares (GUM 5.1.2).
 */
export function sumFigures(figures: readonly Figure[]): Figure {
  const known = figures.filter(counts);
  if (known.length === 0) return noSum(figures);
  const reasons: QualityReason[] = [];
  if (known.length < figures.length) reasons.push('inputBad');
  if (known.some(({ quality }) => quality === 'uncertain')) reasons.push('inputUncertain');
  const uncertainties = known.map(({ expandedUncertainty }) => expandedUncertainty);
  return {
    value: known.reduce((sum, { value }) => sum + (value ?? 0), 0),
    age: oldestAge(known),
    quality: reasons.length === 0 ? 'good' : 'uncertain',
    reasons,
    expandedUncertainty: uncertainties.includes(null) ? null : Math.hypot(...uncertainties.map((u) => u ?? 0)),
  };
}

/**
 * What is said of a sum that can't be told: every reason for which one of its parts has no value, each once. Of parts
 * that never have one it is told only where there are no others.
 */
export function noSum(figures: readonly Figure[]): Figure {
  const all = figures.filter((figure) => !counts(figure));
  if (all.length === 0) return noFigure;
  const lacking = all.filter((figure) => !isAbsent(figure));
  const without = lacking.length === 0 ? all : lacking;
  return {
    ...noFigure,
    age: oldestAge(without),
    reasons: [...new Set(without.flatMap(({ reasons }) => reasons))],
  };
}

const oldestAge = (figures: readonly Figure[]): number | null =>
  figures.reduce<number | null>((oldest, { age }) => (age === null ? oldest : Math.max(oldest ?? 0, age)), null);
