import { usable } from '../../alarm-rules/judge-context';
import type { PermitRecord } from '../permit-record';
import type { PipelineState } from '../pipeline-state';

type Baseline = PermitRecord['baseline'];

/** What a permit compares with, as it is now. Branch −1: the whole loop, whose flow stands for that of a branch. NaN: not known. */
export interface PermitSigns {
  readonly branchFlow: number;
  readonly gasLoad: number;
  readonly waterVolume: number;
  /** As last told, however old that is; null where the site has no such point. */
  readonly isIsolated: boolean | null;
}

export function signsNow({ site, state, unitSlots }: PipelineState, unitIndex: number, branch: number): PermitSigns {
  const slots = unitSlots[unitIndex];
  const unit = site.units[unitIndex];
  if (slots === undefined || unit === undefined) return unknown;
  const { separatorAreaM2, supplyTankAreaM2 } = unit.design;
  const isolated = unit.branches[branch]?.slot.isolated ?? -1;
  const separator = usable(state, slots.separatorLevel) * (separatorAreaM2 ?? NaN);
  const supply = slots.supplyTankLevel < 0 ? 0 : usable(state, slots.supplyTankLevel) * (supplyTankAreaM2 ?? NaN);
  return {
    branchFlow: usable(state, branch < 0 ? slots.loopFlow : (slots.branchFlow[branch] ?? -1)),
    gasLoad: usable(state, slots.gasLoad),
    waterVolume: separator + supply,
    isIsolated: isolated < 0 ? null : (state.value[isolated] as number) >= 0.5,
  };
}

const unknown: PermitSigns = { branchFlow: NaN, gasLoad: NaN, waterVolume: NaN, isIsolated: null };

/** Beside other work that is open, the air of that work is in the gas load already: what stood before it all counts. */
export function baselineOf({ openPermits }: PipelineState, unitIndex: number, signs: PermitSigns): Baseline {
  const isBeside = openPermits.count[unitIndex] !== 0;
  return {
    branchFlowM3PerS: known(signs.branchFlow),
    gasLoadM3PerS: known(isBeside ? (openPermits.baselineM3PerS[unitIndex] as number) : signs.gasLoad),
    waterVolumeM3: known(signs.waterVolume),
  };
}

/**
 * What was not known when the work began can't be waited for. A branch that was in the loop has to be so again, as behind shut
 * valves it lets in no air however open it is; that alone says nothing of the end of the work.
 */
export function waitsForOf(baseline: Baseline, { isIsolated }: PermitSigns): PermitRecord['waitsFor'] {
  const waits: PermitRecord['waitsFor'][number][] = [];
  if (baseline.branchFlowM3PerS !== null) waits.push('branchFlow');
  if (baseline.gasLoadM3PerS !== null) waits.push('gasLoad');
  if (baseline.waterVolumeM3 !== null) waits.push('level');
  if (waits.length > 0 && isIsolated === false) waits.push('isolation');
  return waits;
}

const known = (value: number): number | null => (Number.isFinite(value) ? value : null);
