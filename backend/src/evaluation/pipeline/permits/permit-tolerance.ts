import { guard } from '../../alarm-rules/judge-context';
import type { CompiledUnit } from '../../site/compiled-site';
import type { PermitRecord } from '../permit-record';
import type { PipelineState } from '../pipeline-state';
import type { PermitSigns } from './permit-baseline';

/** A branch comes back to within so much of its flow as the neighbours' valves and the loop's set points let it: share. Own rule. */
const flowShare = 0.1;
/** One that was shut, or nearly, when the work began: share of its rated flow, as no meter reads zero for ever. Own rule. */
const shutShare = 0.05;
/** Hose changes leave a seal a little less tight, and dissolved air varies: free m³/s. Own rule (3 L/min). */
const gasM3PerS = 3 / 60_000;
/** Water that stays in a bucket, and pockets that take hours to go: m³, or this share of all water. Own rule. */
const waterM3 = 0.01;
const waterShare = 0.02;

/** How near to its baseline each sign has to be; at least its own expanded uncertainty, twice (two readings differ by both). */
export function isBack(
  pipeline: PipelineState,
  unitIndex: number,
  permit: PermitRecord,
  signs: PermitSigns,
  sign: PermitRecord['waitsFor'][number],
): boolean {
  const unit = pipeline.site.units[unitIndex];
  if (unit === undefined) return false;
  const { branchFlowM3PerS: flow, gasLoadM3PerS: gas, waterVolumeM3: water } = permit.baseline;
  switch (sign) {
    case 'branchFlow':
      return (
        flow !== null && Math.abs(signs.branchFlow - flow) <= flowTolerance(pipeline, unit, unitIndex, permit, flow)
      );
    case 'gasLoad':
      return gas !== null && signs.gasLoad - gas <= gasTolerance(pipeline, unitIndex);
    case 'level':
      return water !== null && Math.abs(signs.waterVolume - water) <= waterTolerance(pipeline, unit, unitIndex);
    case 'isolation':
      return signs.isIsolated !== true;
  }
}

export const gasTolerance = ({ state, unitSlots }: PipelineState, unitIndex: number): number =>
  Math.max(gasM3PerS, 2 * guard(state, unitSlots[unitIndex]?.gasLoad ?? -1));

function flowTolerance(
  { state, unitSlots }: PipelineState,
  unit: CompiledUnit,
  unitIndex: number,
  permit: PermitRecord,
  flowM3PerS: number,
): number {
  const branch = unit.branches.findIndex(({ id }) => id === permit.branch);
  const slots = unitSlots[unitIndex];
  const slot = permit.branch === null ? (slots?.loopFlow ?? -1) : (slots?.branchFlow[branch] ?? -1);
  const { ratedFlowM3PerS } = unit.design;
  const rated =
    permit.branch === null
      ? ratedFlowM3PerS
      : (unit.branches[branch]?.ratedFlowM3PerS ?? ratedFlowM3PerS / Math.max(1, unit.branches.length));
  return Math.max(flowShare * Math.abs(flowM3PerS), shutShare * rated, 2 * guard(state, slot));
}

function waterTolerance({ state, unitSlots }: PipelineState, unit: CompiledUnit, unitIndex: number): number {
  const slots = unitSlots[unitIndex];
  const { separatorAreaM2, supplyTankAreaM2, volumes } = unit.design;
  const separator = guard(state, slots?.separatorLevel ?? -1) * (separatorAreaM2 ?? 0);
  const supply = guard(state, slots?.supplyTankLevel ?? -1) * (supplyTankAreaM2 ?? 0);
  return Math.max(waterM3, waterShare * (volumes.waterM3 ?? 0), 2 * (separator + supply));
}
