import type { Explanation } from '@ebbline/shared/contract/explanation';
import { coverageFactorOf } from '@ebbline/shared/uncertainty/degrees-of-freedom';
import { varianceOf, type BudgetPart } from '../../evaluation/derive/uncertainty-budget';
import type { Pipeline } from '../../evaluation/pipeline/pipeline';
import { unitAt } from './to-loop-line';
import { finiteOrNull } from './time-text';
import { toReading } from './to-reading';

/** What stands behind the value of a slot of a unit or of its hall. */
export function toExplanation(pipeline: Pipeline, unit: number, slot: number, nowMs: number): Explanation {
  const { state, formula, source, inputSlots, siteFigures, parts } = pipeline.explain(unit, slot);
  const values = { site: pipeline.site, state };
  const reading = toReading(values, slot, nowMs);
  const stated = reading.expandedUncertainty !== null;
  const degrees = state.degreesOfFreedom[slot] ?? Infinity;
  const factor = coverageFactorOf(degrees);
  return {
    unit: unitAt(pipeline, unit).id,
    reading,
    formula,
    source,
    inputs: inputSlots.map((input) => toReading(values, input, nowMs)),
    siteFigures: siteFigures.map((figure) => ({ ...figure })),
    budget: reading.value === null ? [] : budgetOf(parts),
    standardUncertainty: stated ? (reading.expandedUncertainty ?? 0) / factor : null,
    coverageFactor: stated ? factor : null,
    degreesOfFreedom: stated ? finiteOrNull(degrees) : null,
  };
}

function budgetOf(parts: readonly BudgetPart[]): Explanation['budget'] {
  const variance = varianceOf(parts);
  return parts.map(({ from, contribution, degreesOfFreedom }) => ({
    from,
    contribution: finiteOrNull(contribution),
    share: finiteOrNull((contribution * Math.abs(contribution)) / variance),
    degreesOfFreedom: finiteOrNull(degreesOfFreedom),
  }));
}
