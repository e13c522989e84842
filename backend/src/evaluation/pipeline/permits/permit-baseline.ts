import { usable } from '../../alarm-rules/judge-context';
import type { PermitRecord } from '../permit-record';
import type { PipelineState } from '../pipeline-state';

type Baseline = PermitRecord['baseline'];

/** What a permit compares with, as it is now. Branch −1: the whole loop, whose flow stands for that of a branch. NaN: not known. */
export interface PermitSigns {
  readonly branchFlow: number;
  readonly gasLoad: number;
  readonly waterVolume: number;
}

export function signsNow({ site, state, unitSlots }: PipelineState, unitIndex: number, branch: number): PermitSigns {
  const slots = unitSlots[unitIndex];
  const unit = site.units[unitIndex];
  if (slots === undefined || unit === undefined) return { branchFlow: NaN, gasLoad: NaN, waterVolume: NaN };
  const { separatorAreaM2, supplyTankAreaM2 } = unit.design;
  const separator = usable(state, slots.separatorLevel) * (separatorAreaM2 ?? NaN);
  const supply = slots.supplyTankLevel < 0 ? 0 : usable(state, slots.supplyTankLevel) * (supplyTankAreaM2 ?? NaN);
  return {
    branchFlow: usable(state, branch < 0 ? slots.loopFlow : (slots.branchFlow[branch] ?? -1)),
    gasLoad: usable(state, slots.gasLoad),
    waterVolume: separator + supply,
  };
}

export function baselineOf(pipeline: PipelineState, unitIndex: number, branch: number): Baseline {
  const signs = signsNow(pipeline, unitIndex, branch);
  return {
    branchFlowM3PerS: known(signs.branchFlow),
    gasLoadM3PerS: known(signs.gasLoad),
    waterVolumeM3: known(signs.waterVolume),
  };
}

/** What was not known when the work began can't be waited for. */
export function waitsForOf(baseline: Baseline): PermitRecord['waitsFor'] {
  const waits: ('branchFlow' | 'gasLoad' | 'level')[] = [];
  if (baseline.branchFlowM3PerS !== null) waits.push('branchFlow');
  if (baseline.gasLoadM3PerS !== null) waits.push('gasLoad');
  if (baseline.waterVolumeM3 !== null) waits.push('level');
  return waits;
}

const known = (value: number): number | null => (Number.isFinite(value) ? value : null);
