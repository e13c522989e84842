import { usable } from '../../alarm-rules/judge-context';
import type { UnitPlan } from '../../derive/unit-plan';
import type { PipelineState } from '../pipeline-state';

/** Below this share of its rated flow a meter shows its own zero. Own rule. */
const zeroFlowShare = 0.05;

/** Whether a vacuum source takes gas away; null where nothing says so. */
export function sourceRuns({ state }: PipelineState, { slot }: UnitPlan): boolean | null {
  const lead = usable(state, slot['vacuum.running']);
  const standby = usable(state, slot['vacuum.standby.running']);
  const speed = usable(state, slot['vacuum.speed']);
  if (lead > 0 || standby > 0) return true;
  if (slot['vacuum.running'] < 0) return Number.isNaN(speed) ? null : speed > 0;
  const known = !Number.isNaN(lead) && (slot['vacuum.standby.running'] < 0 || !Number.isNaN(standby));
  return known ? false : null;
}

/** Whether water moves in the loop; null where nothing says so. */
export function flows({ state }: PipelineState, { slot, unit }: UnitPlan): boolean | null {
  const flow = usable(state, slot['loop.flow']);
  const lead = usable(state, slot['pump.running']);
  const standby = usable(state, slot['pump.standby.running']);
  if (flow > zeroFlowShare * unit.design.ratedFlowM3PerS || lead > 0 || standby > 0) return true;
  if (!Number.isNaN(flow)) return false;
  const known = !Number.isNaN(lead) && (slot['pump.standby.running'] < 0 || !Number.isNaN(standby));
  return known ? false : null;
}
