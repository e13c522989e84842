import type { Explanation } from '@ebbline/shared/contract/explanation';
import type { Figure } from '@ebbline/shared/contract/live-feed';
import type { Reading } from '@ebbline/shared/contract/reading';
import { coverageFactor } from '@ebbline/shared/uncertainty/combine';
import type { CompiledHall } from '../../evaluation/site/compiled-site';
import { hallSums, type HallSum, type UnitInputs } from './hall-sums';
import type { Scene } from './scene';
import { toExplanation } from './to-explanation';
import { slotOf, unitAt } from './to-loop-line';
import { noFigure, toReading } from './to-reading';

/** What stands behind a point of a hall, or behind a sum over its units; null where the hall has none of this name. */
export function toHallExplanation(scene: Scene, hall: CompiledHall, point: string): Explanation | null {
  const { pipeline } = scene;
  const sum = hallSums[point];
  if (sum !== undefined) return sumExplained(scene, hall, point, sum);
  const slot = pipeline.site.holders[hall.holder]?.slotOf.get(point);
  // The hall's points are the same to each of its units; a hall without units has nothing that rests on them.
  const [unit] = hall.units;
  if (slot === undefined || unit === undefined) return null;
  return { ...toExplanation(pipeline, unit, slot, scene.nowMs()), unit: hall.id };
}

function sumExplained(scene: Scene, hall: CompiledHall, point: string, sum: HallSum): Explanation {
  const { pipeline } = scene;
  const { site } = pipeline;
  const values = { site, state: pipeline.state };
  const units: readonly UnitInputs[] = hall.units.map((index) => ({
    unit: unitAt(pipeline, index).id,
    readings: sum.of.map((id) => {
      const slot = slotOf(pipeline, index, id);
      return slot < 0 ? readingOf(id, 'W', noFigure, null) : toReading(values, slot, scene.nowMs());
    }),
  }));
  const { figure, parts } = sum.add(units);
  const inputs = units.flatMap(({ unit, readings }) => readings.map((one) => ({ ...one, ofUnit: unit })));
  const variance = parts.reduce((total, { contribution }) => total + contribution ** 2, 0);
  const stated = figure.value !== null && figure.expandedUncertainty !== null;
  const share = (contribution: number): number | null => (variance > 0 ? contribution ** 2 / variance : null);
  return {
    unit: hall.id,
    reading: readingOf(point, sum.unitOfMeasure, figure, oldest(inputs)),
    formula: sum.formula,
    source:
      'Sum over the units of the hall; uncertainties of separate instruments add as squares, JCGM 100:2008, 5.1.2',
    inputs,
    siteFigures: [],
    budget: parts.map(({ from, contribution }) => ({
      from,
      contribution: Number.isFinite(contribution) ? contribution : null,
      share: stated ? share(contribution) : null,
    })),
    standardUncertainty: stated ? (figure.expandedUncertainty ?? 0) / coverageFactor : null,
    coverageFactor: stated ? coverageFactor : null,
    degreesOfFreedom: null,
  };
}

const readingOf = (id: string, unit: string, figure: Figure, time: string | null): Reading => ({
  ...figure,
  id,
  kind: 'derived',
  unit,
  time,
  reasons: [...figure.reasons],
  where: null,
});

/** The sum is no newer than the oldest that it counts. */
function oldest(inputs: readonly Reading[]): string | null {
  const times = inputs
    .filter(({ value, quality }) => value !== null && quality !== 'bad')
    .map(({ time }) => time ?? '');
  const [first] = times.filter((time) => time !== '').sort();
  return first ?? null;
}
