import type { Figure } from '@ebbline/shared/contract/live-feed';
import type { CompiledPlate } from '../../evaluation/site/compiled-site';
import type { ShownPipeline } from './scene';
import { noFigure, toFigure } from './to-reading';

/** The temperature of the hottest plate, and which one it is. */
export interface Hottest {
  readonly hottestPlate: Figure;
  /** Id of the plate; null where there is no temperature. */
  readonly hottestPlateId: string | null;
}

/** The highest temperature that may be used; a plate whose sensor is bad does not count as cold. */
export function hottestOf(pipeline: ShownPipeline, plates: readonly CompiledPlate[], nowMs: number): Hottest {
  const all = plates.map(({ id, slot }) => ({ id, figure: toFigure(pipeline, slot.temperature, nowMs) }));
  const usable = all.filter(({ figure: { value, quality } }) => value !== null && quality !== 'bad');
  const [first] = usable;
  if (first === undefined) return { hottestPlate: all[0]?.figure ?? noFigure, hottestPlateId: null };
  const { id, figure } = usable.reduce(
    (highest, one) => ((one.figure.value ?? 0) > (highest.figure.value ?? 0) ? one : highest),
    first,
  );
  return { hottestPlate: figure, hottestPlateId: id };
}
