import type { BranchShare, Figure, LoopFrame } from '@ebbline/shared/contract/live-feed';
import type { CompiledBranch } from '../../evaluation/site/compiled-site';
import { frameBase } from './frame-base';
import type { Scene } from './scene';
import { alarmsInOrder } from './to-alarm';
import { toLoopLine, unitAt } from './to-loop-line';
import { readingsOf } from './readings-of';
import { noFigure, toFigure } from './to-reading';

/** What the Loop screen shows of one unit. */
export function toLoopFrame(scene: Scene, unit: number): Omit<LoopFrame, 'sequence'> {
  const { pipeline } = scene;
  const { id, hall, branches } = unitAt(pipeline, unit);
  return {
    screen: 'loop',
    unit: id,
    hall: pipeline.site.halls[hall]?.id ?? '',
    line: toLoopLine(scene, unit, scene.alarms()),
    points: readingsOf(pipeline, unit, scene.nowMs()),
    path: pipeline.path(unit),
    branches: branches.map((branch, i) => toBranchShare(scene, unit, branch, i)),
    alarms: alarmsInOrder(scene).filter((alarm) => alarm.unit === id),
    ...frameBase(scene),
  };
}

function toBranchShare({ pipeline, nowMs }: Scene, unit: number, branch: CompiledBranch, index: number): BranchShare {
  const plates = unitAt(pipeline, unit).plates.filter((plate) => plate.branch === index);
  return {
    id: branch.id,
    name: branch.name,
    flow: toFigure(pipeline, branch.slot.flow, nowMs()),
    ratedFlow: branch.ratedFlowM3PerS,
    returnTemperature: toFigure(pipeline, branch.slot.returnTemperature, nowMs()),
    hottestPlate: hottest(plates.map((plate) => toFigure(pipeline, plate.slot.temperature, nowMs()))),
  };
}

/** The highest value that may be used; a plate whose sensor is bad does not count as cold. */
function hottest(figures: readonly Figure[]): Figure {
  return figures
    .filter(({ value, quality }) => value !== null && quality !== 'bad')
    .reduce<Figure>(
      (highest, figure) => ((figure.value ?? 0) > (highest.value ?? -Infinity) ? figure : highest),
      figures[0] ?? noFigure,
    );
}
