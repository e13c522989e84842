import type { Figure } from '@ebbline/shared/contract/live-feed';
import type { QualityReason } from '@ebbline/shared/contract/reading';
import { noFigure } from './to-reading';

/**
 * The sum over the loops of a hall. Where some have no value the sum is of the others and says so by its
 * quality; without any value there is none. Uncertainties of separate instruments add as squares (GUM 5.1.2).
 */
export function sumFigures(figures: readonly Figure[]): Figure {
  const known = figures.filter((figure) => figure.value !== null && figure.quality !== 'bad');
  if (known.length === 0) return noFigure;
  const reasons: QualityReason[] = [];
  if (known.length < figures.length) reasons.push('inputBad');
  if (known.some(({ quality }) => quality === 'uncertain')) reasons.push('inputUncertain');
  const uncertainties = known.map(({ expandedUncertainty }) => expandedUncertainty);
  return {
    value: known.reduce((sum, { value }) => sum + (value ?? 0), 0),
    age: known.reduce<number | null>((oldest, { age }) => (age === null ? oldest : Math.max(oldest ?? 0, age)), null),
    quality: reasons.length === 0 ? 'good' : 'uncertain',
    reasons,
    expandedUncertainty: uncertainties.includes(null) ? null : Math.hypot(...uncertainties.map((u) => u ?? 0)),
  };
}
