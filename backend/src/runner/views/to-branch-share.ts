import type { BranchShare } from '@ebbline/shared/contract/live-feed';
import type { CompiledBranch } from '../../evaluation/site/compiled-site';
import { hottestOf } from './hottest';
import type { PictureScene } from './scene';
import { slotOf, unitAt } from './to-loop-line';
import { toFigure } from './to-reading';

/** One rack's manifold pair: its share of the flow, its heat, its hottest chip, and whether the loop protects it. */
export function toBranchShare(
  { pipeline, nowMs }: PictureScene,
  unit: number,
  branch: CompiledBranch,
  index: number,
): BranchShare {
  const { id, plates } = unitAt(pipeline, unit);
  const figure = (slot: number) => toFigure(pipeline, slot, nowMs());
  const isolated = figure(branch.slot.isolated);
  const permitted = pipeline.permits().some((permit) => permit.unit === id && permit.branch === branch.id);
  return {
    id: branch.id,
    name: branch.name,
    flow: figure(branch.slot.flow),
    ratedFlow: branch.ratedFlowM3PerS,
    returnTemperature: figure(branch.slot.returnTemperature),
    ...hottestOf(
      pipeline,
      plates.filter((plate) => plate.branch === index),
      nowMs(),
    ),
    heatRemoved: figure(slotOf(pipeline, unit, `branch.${branch.id}.heatRemoved`)),
    returnPressure: figure(branch.slot.returnPressure),
    vacuumMargin: figure(slotOf(pipeline, unit, `branch.${branch.id}.vacuumMargin`)),
    flowShare: figure(slotOf(pipeline, unit, `branch.${branch.id}.flowShare`)),
    state: permitted ? 'openUnderPermit' : isolated.value === 1 ? 'isolated' : 'inLoop',
  };
}
