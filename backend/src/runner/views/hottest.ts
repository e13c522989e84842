import type { Figure } from '@ebbline/shared/contract/live-feed';
import type { CompiledPlate } from '../../evaluation/site/compiled-site';
import type { ShownPipeline } from './scene';
import { noFigure, toFigure } from './to-reading';

/** The highest temperature that may be used; a plate whose sensor is bad does not count as cold. */
export function hottestOf(pipeline: ShownPipeline, plates: readonly CompiledPlate[], nowMs: number): Figure {
  const figures = plates.map((plate) => toFigure(pipeline, plate.slot.temperature, nowMs));
  return figures
    .filter(({ value, quality }) => value !== null && quality !== 'bad')
    .reduce<Figure>(
      (highest, figure) => ((figure.value ?? 0) > (highest.value ?? -Infinity) ? figure : highest),
      figures[0] ?? noFigure,
    );
}
