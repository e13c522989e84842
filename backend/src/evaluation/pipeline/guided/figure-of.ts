import type { GuidedFigure } from '@ebbline/shared/contract/guided-test';
import { coverageFactorOf, effectiveDegreesOfFreedom } from '@ebbline/shared/uncertainty/degrees-of-freedom';
import { judged } from './move-on';

export interface FigureParts extends Pick<GuidedFigure, 'title' | 'quantity' | 'value' | 'low' | 'high'> {
  /** Standard uncertainty by observations, with their degrees of freedom. */
  readonly scatter: { readonly from: string; readonly contribution: number; readonly degreesOfFreedom: number };
  /** Standard uncertainties by what is stated: of many degrees of freedom. */
  readonly others: readonly { readonly from: string; readonly contribution: number }[];
}

/**
 * A figure with its expanded uncertainty (GUM eq. 10; Welch–Satterthwaite, G.4.1) and its verdict where it has a limit. Parts that
 * bring nothing are left out of the budget.
 */
export function figureOf({ scatter, others, ...figure }: FigureParts): GuidedFigure {
  const parts = [scatter, ...others];
  const u = Math.sqrt(parts.reduce((sum, { contribution }) => sum + contribution ** 2, 0));
  const factor = coverageFactorOf(effectiveDegreesOfFreedom(u, [scatter]));
  const expandedUncertainty = factor * u;
  const held = { ...figure, expandedUncertainty, coverageFactor: factor };
  return {
    ...held,
    verdict: figure.low === null && figure.high === null ? null : judged(held),
    budget: parts.flatMap(({ from, contribution }) => (contribution > 0 ? [{ from, contribution }] : [])),
  };
}
